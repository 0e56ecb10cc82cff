import Link from 'next/link'
import { EmptyState } from '@/app/_ui/empty-state'
import { JarGaps } from '@/app/_drawings/jar-gaps'
import { LinkButton } from '@/app/_ui/link-button'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { roleName, type Role } from '@/shared/access/actor'

interface MyGroupsProps {
  readonly name: string
  readonly groups: readonly { id: string; name: string; role: Role; household: string }[]
}

/** The groups of somebody who is signed in. */
export function MyGroups({ name, groups }: MyGroupsProps) {
  return (
    <>
      <PageHead kicker={name} title={groups.length === 0 ? 'No group yet' : 'Your groups'} />
      <Sheet lid={groups.length === 0 ? 'domed' : 'sunk'}>
        {groups.length === 0 ? (
          <EmptyState
            drawing={<JarGaps />}
            text="You are in no group yet. Make one, or open the invitation that a neighbour sent you."
            action={<LinkButton href="/groups/new">Make a group</LinkButton>}
          />
        ) : (
          <ul className="list">
            {groups.map((group) => (
              <li key={group.id}>
                <Link className="way" href={`/g/${group.id}`} prefetch={false}>
                  <span className="slab">{group.name}</span>
                </Link>
                <p className="quiet">
                  {roleName(group.role)}, {group.household}
                </p>
              </li>
            ))}
          </ul>
        )}
      </Sheet>
      {groups.length > 0 && (
        <p className="after">
          <LinkButton kind="plain" href="/groups/new">
            Make another group
          </LinkButton>
        </p>
      )}
    </>
  )
}
