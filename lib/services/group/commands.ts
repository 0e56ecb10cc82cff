import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addHousehold } from './add-household'
import { addPerson } from './add-person'
import { changePersonRole } from './change-person-role'
import { editGroup } from './edit-group'
import { editHousehold } from './edit-household'
import { editPerson } from './edit-person'
import { invitePerson } from './invite-person'
import { removeHousehold } from './remove-household'
import { revokeInvite } from './revoke-invite'
import { setPersonActive } from './set-person-active'

/** The changes of this room. */
export const groupCommands: readonly AnyCommand[] = [
  editGroup,
  addHousehold,
  editHousehold,
  removeHousehold,
  addPerson,
  editPerson,
  changePersonRole,
  setPersonActive,
  invitePerson,
  revokeInvite,
]
