import Link from 'next/link'

type Props = { groupId: string; dayId: string; name: string; after?: string }

/** Which day a page belongs to, and the way back to it; `after` is said behind the name. */
export const DayPlace = ({ groupId, dayId, name, after }: Props) => (
  <>
    <Link className="tall" href={`/g/${groupId}/days/${dayId}`} prefetch={false}>
      {name}
    </Link>
    {after && `, ${after}`}
  </>
)
