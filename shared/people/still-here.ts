/** A household as pages name it. One that left stays readable in what it did, and is offered for nothing new. */
export interface NamedHousehold {
  readonly id: string
  readonly name: string
  readonly hasLeft: boolean
}

/** The households that may be chosen: those that have not left. */
export const stillHere = (households: readonly NamedHousehold[]): NamedHousehold[] => households.filter(({ hasLeft }) => !hasLeft)
