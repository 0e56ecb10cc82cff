import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addEquipment } from './add-equipment'
import { chargeEquipment } from './charge-equipment'
import { countHours } from './count-hours'
import { markPayment } from './mark-payment'
import { setMoneyRule } from './set-money-rule'
import { unchargeEquipment } from './uncharge-equipment'
import { undoMark } from './undo-mark'

/** The changes of this room. */
export const moneyCommands: readonly AnyCommand[] = [
  setMoneyRule,
  countHours,
  addEquipment,
  chargeEquipment,
  unchargeEquipment,
  markPayment,
  undoMark,
]
