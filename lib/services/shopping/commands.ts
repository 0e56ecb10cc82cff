import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addPack } from './add-pack'
import { assignErrand } from './assign-errand'
import { buyItem } from './buy-item'
import { coverItem } from './cover-item'
import { editPack } from './edit-pack'
import { keepLeftOver } from './keep-left-over'
import { putBack } from './put-back'
import { removePack } from './remove-pack'
import { useUpLeftOver } from './use-up-left-over'

/** The changes of this room. */
export const shoppingCommands: readonly AnyCommand[] = [
  addPack,
  editPack,
  removePack,
  assignErrand,
  buyItem,
  putBack,
  coverItem,
  keepLeftOver,
  useUpLeftOver,
]
