/** Where the things stand, and whether the reader may change them. */
export interface Place {
  readonly groupId: string
  readonly kitchenId: string
  readonly edits: boolean
}
