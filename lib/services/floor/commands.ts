import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { abandonBatch } from './abandon-batch'
import { checkSeals } from './check-seals'
import { emptyCanner } from './empty-canner'
import { failLoad } from './fail-load'
import { fillBatch } from './fill-batch'
import { finishProcess } from './finish-process'
import { loadCanner } from './load-canner'
import { lostTemperature } from './lost-temperature'
import { noteBrokenJar } from './note-broken-jar'
import { noteIncident } from './note-incident'
import { reachedTemperature } from './reached-temperature'
import { receiveIngredients } from './receive-ingredients'
import { relieveOperator } from './relieve-operator'
import { restDay } from './rest-day'
import { setJarsAside } from './set-jars-aside'
import { startBatch } from './start-batch'
import { startFilling } from './start-filling'

/** The changes of this room. */
export const floorCommands: readonly AnyCommand[] = [
  receiveIngredients,
  startBatch,
  startFilling,
  fillBatch,
  abandonBatch,
  setJarsAside,
  loadCanner,
  reachedTemperature,
  lostTemperature,
  finishProcess,
  emptyCanner,
  relieveOperator,
  failLoad,
  noteBrokenJar,
  noteIncident,
  checkSeals,
  restDay,
]
