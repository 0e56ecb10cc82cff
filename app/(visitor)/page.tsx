import { Page } from '@/app/_ui/page'
import { currentUser } from '@/lib/auth/current-actor'
import { myGroups } from '@/lib/queries/my-groups'
import { MyGroups } from './my-groups'
import { Welcome } from './welcome'

/** The start: for a stranger what this is, for somebody with an account their groups. */
export default async function StartPage() {
  const user = await currentUser()
  if (!user) return <Welcome />
  return (
    <Page size="phone">
      <MyGroups name={user.name} groups={await myGroups(user.userId)} />
    </Page>
  )
}
