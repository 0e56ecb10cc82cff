import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'

/**
 * The purchase of the glass that a batch is filled into, where somebody says it: whose jars they are, and whether they came from a shop.
 *
 * Shop jars are refused for what goes under pressure. Source: USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539, Guide 1, Jars
 * and lids.
 */
export async function takeGlass(
  { tx, actor: { groupId } }: CommandContext,
  jarLotId: string | undefined,
  batchId: string,
  jars: number,
): Promise<Result<string | null, Refusal>> {
  if (jarLotId === undefined) return ok(null)
  const lot = await tx.supplyLot.findFirst({
    where: { groupId, id: jarLotId, kind: 'jar' },
    select: { lotCode: true, jarSize: true, count: true, chipped: true, isShopJar: true },
  })
  if (!lot) return refuse(notFound('Lot of jars'))
  const batch = await tx.kettleBatch.findUniqueOrThrow({
    where: { groupId_id: { groupId, id: batchId } },
    select: { preparation: { select: { jarSize: true, method: true } } },
  })
  const { jarSize, method } = batch.preparation
  if (lot.jarSize !== jarSize)
    return refuse(badInput({ jarLotId: [`${lot.lotCode} are of another size. Choose jars of the batch’s size.`] }))
  if (lot.isShopJar && method === 'pressure') return refuse(shopJars(lot.lotCode))
  if (jars > lot.count - lot.chipped)
    return refuse(badInput({ jarLotId: [`${lot.lotCode}: only ${lot.count - lot.chipped} of them are sound.`] }))
  return ok(jarLotId)
}

const shopJars = (lot: string): Refusal => ({
  code: 'shop-jars-under-pressure',
  status: 422,
  what: `${lot}: not for a pressure canner.`,
  why: 'Jars that shop food came in are weaker than canning jars and break under pressure.',
  instead: 'Fill canning jars, and keep these for dry things.',
})
