import { WALL_TOP } from '@/shared/drawing/wall-rows'

/** Where the canners of a crowded wall stand: their ground lines, the height of a full boil above each, and where the chart ends. */
export type CrowdRows = { readonly lines: readonly number[]; readonly full: number; readonly bottom: number }

/** Rows of a chart that is higher than this cannot be read across a room: it would be drawn too small to fit the wall. */
export const TALLEST_WALL = 1040

const ROOM = 640
const PITCH = { least: 44, most: 96 }
const FULL_SHARE = 0.64
const BELOW = 18

/** Puts only canners down a wall, one line each, so that words keep their 28 px whatever else the day has. */
export function crowdRows(canners: number): CrowdRows {
  const pitch = Math.max(PITCH.least, Math.min(PITCH.most, Math.floor(ROOM / Math.max(1, canners))))
  const lines = Array.from({ length: canners }, (_, row) => WALL_TOP + (row + 1) * pitch)
  return { lines, full: Math.round(pitch * FULL_SHARE), bottom: (lines.at(-1) ?? WALL_TOP) + BELOW }
}

/** A running day on a crowded wall begins an hour before now: what is over makes room for what is to come. */
export const crowdFrom = (first: number, now: number | null): number =>
  now === null ? first : Math.max(first, Math.floor((now - 60) / 30) * 30)

/** How far a load's name stands in from its start, and how wide a letter of 28 px is at most. */
export const CROWD_INSET = 5
const LETTER = 18
const GAP = 4

/**
 * Where the middle of a load's minutes stands on a crowded wall: in the middle of its process, further right where its name reaches that far.
 *
 * @returns null where the load ends before both have room
 */
export function crowdMinutesAt(
  label: string,
  minutes: number,
  { from, middle, to }: { readonly from: number; readonly middle: number; readonly to: number },
): number | null {
  const half = (String(minutes).length * LETTER) / 2
  const at = Math.max(middle, from + CROWD_INSET + label.length * LETTER + GAP + half)
  return at + half > to ? null : Math.round(at * 10) / 10
}
