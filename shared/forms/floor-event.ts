import { z } from 'zod'
import * as floor from './floor'

const DAY = { dayId: true } as const

/** Everything that can be noted of a day's floor, one event a request, told apart by `type`. The day stands in the address. */
export const FloorEvent = z.discriminatedUnion('type', [
  floor.ReceiveIngredients.omit(DAY).extend({ type: z.literal('receive-ingredients') }),
  floor.StartBatch.omit(DAY).extend({ type: z.literal('start-batch') }),
  floor.StartFilling.omit(DAY).extend({ type: z.literal('start-filling') }),
  floor.FillBatch.omit(DAY).extend({ type: z.literal('fill-batch') }),
  floor.AbandonBatch.omit(DAY).extend({ type: z.literal('abandon-batch') }),
  floor.SetJarsAside.omit(DAY).extend({ type: z.literal('set-jars-aside') }),
  floor.LoadCanner.omit(DAY).extend({ type: z.literal('load-canner') }),
  floor.AtLoad.omit(DAY).extend({ type: z.literal('reached-temperature') }),
  floor.AtLoad.omit(DAY).extend({ type: z.literal('lost-temperature') }),
  floor.AtLoad.omit(DAY).extend({ type: z.literal('finish-process') }),
  floor.AtLoad.omit(DAY).extend({ type: z.literal('empty-canner') }),
  floor.RelieveOperator.omit(DAY).extend({ type: z.literal('relieve-operator') }),
  floor.FailLoad.omit(DAY).extend({ type: z.literal('fail-load') }),
  floor.NoteBrokenJar.omit(DAY).extend({ type: z.literal('note-broken-jar') }),
  floor.NoteIncident.omit(DAY).extend({ type: z.literal('note-incident') }),
  floor.CheckSeals.omit(DAY).extend({ type: z.literal('check-seals') }),
  floor.RestDay.omit(DAY).extend({ type: z.literal('rest-day') }),
])
export type FloorEvent = z.infer<typeof FloorEvent>
