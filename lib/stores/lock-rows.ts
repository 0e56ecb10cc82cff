import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'

type Found = readonly { id: string }[]

/** Each locks one row of the group until the transaction ends and says whether it is there: two people changing it take their turns. */
export const lockGroup = async (tx: Tx, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM "group" WHERE id = ${id} FOR UPDATE`).length > 0

export const lockHousehold = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM household WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

/** The same for a household that has not left: nobody joins one that did. */
export const lockPresentHousehold = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM household WHERE group_id = ${groupId} AND id = ${id} AND left_at IS NULL FOR UPDATE`).length > 0

export const lockPerson = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM person WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

export const lockInvite = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM invite WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

export const lockKitchen = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM kitchen WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

export const lockBurner = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM burner WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

export const lockKettle = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM kettle WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

export const lockCanner = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM canner WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

export const lockSupply = async (tx: Tx, groupId: string, id: string) =>
  (await tx.$queryRaw<Found>`SELECT id FROM supply_lot WHERE group_id = ${groupId} AND id = ${id} FOR UPDATE`).length > 0

/** Locks the group's organisers who can sign in, in a fixed order, and names them: the last one cannot be taken away by two at once. */
export async function lockOrganisers(tx: Tx, groupId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<Found>`
    SELECT id FROM person WHERE group_id = ${groupId} AND role = 'organiser' AND active AND user_id IS NOT NULL ORDER BY id FOR UPDATE`
  return rows.map(({ id }) => id)
}
