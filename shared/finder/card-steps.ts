import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { sayAcid, sayHeadspace } from '@/shared/wording/say-process'

/** One line of the card: what to do, and the drawing of it where there is one. */
export type CardStep = {
  readonly symbol?: 'headspace' | 'lid-flat' | 'canner' | 'pressure' | 'boil' | 'rack' | 'jar' | 'burner'
  readonly text: string
}

/**
 * What is done with the jars around the process, in order.
 *
 * Sources: USDA AIB No. 539, later text, How to use a boiling-water canner (water over the jars), Cooling jars and testing jar seals
 * (12 to 24 h); University of Florida IFAS FCS8277, Table 1 footnote (wait 5 min); USDA AIB No. 539, 1994 text, Recommended canners, part 3
 * (2 to 3 in. of water, vent 10 min, let pressure fall by itself); Oregon State University Extension, 2024 (wait 10 min after the weight is
 * off); University of Missouri Extension, Atmospheric steam canning (steam column, never opened). Finger-tight bands: common practice.
 */
export function cardSteps(process: ScheduledProcess): CardStep[] {
  const acid = sayAcid(process.acidification, process.jarRow, process.jar)
  return [
    ...sterilising(process),
    ...(acid === null ? [] : [{ text: acid }]),
    { symbol: 'headspace', text: `Fill to ${sayHeadspace(process.headspaceInches)}. Free the bubbles. Wipe the rim.` },
    { symbol: 'lid-flat', text: 'New flat lid, band finger-tight.' },
    ...inTheCanner(process),
  ]
}

/** Where the figures of the steps are from, as said at the foot of the card. */
export const stepSources = ({ method }: Pick<ScheduledProcess, 'method'>): string =>
  ({
    'boiling-water': 'USDA AIB No. 539, later text (water over jars, cooling); University of Florida IFAS FCS8277, Table 1 (5 min)',
    'atmospheric-steam': 'University of Missouri Extension, Atmospheric steam canning, 2017; USDA AIB No. 539, later text (cooling)',
    pressure:
      'USDA AIB No. 539, 1994, Recommended canners, part 3; Oregon State University Extension, 2024 (10 min); AIB No. 539, later text (cooling)',
  })[method]

function sterilising({ sterilise, minutes, minutesWithoutSterilising }: ScheduledProcess): CardStep[] {
  if (!sterilise.required) return []
  const longer =
    minutesWithoutSterilising === null ? '' : ` Jars only washed: ${minutesWithoutSterilising} min in the canner, not ${minutes}.`
  return [{ symbol: 'jar', text: `Boil the empty jars ${sterilise.minutes} min first.${longer}` }]
}

const COOL = 'Leave 12 to 24\u00a0h.'

function inTheCanner({ method, minutes, psi, gauge }: ScheduledProcess): CardStep[] {
  switch (method) {
    case 'boiling-water':
      return [
        { symbol: 'canner', text: `Water at least ${minutes > 30 ? '2 in (5 cm)' : '1 in (2.5 cm)'} over the lids, all the time.` },
        { symbol: 'boil', text: 'Clock starts when the water is back at a full boil.' },
        { symbol: 'rack', text: `Burner off, lid off, wait 5 min, then lift. ${COOL}` },
      ]
    case 'atmospheric-steam':
      return [
        { symbol: 'boil', text: 'Clock starts at a full column of steam, 8–10 in (20–25 cm). Never open the canner before the end.' },
        { symbol: 'rack', text: `Burner off. Lid off away from your face. ${COOL}` },
      ]
    case 'pressure':
      return [
        { symbol: 'pressure', text: '2–3 in (5–8 cm) of hot water. Let a steady steam out for 10 min, then close the vent.' },
        {
          symbol: 'burner',
          text:
            gauge === 'dial'
              ? `Clock starts when the needle stands at ${psi} psi (if the dial is off: at its own target).`
              : `Clock starts when the ${psi} psi weight jiggles or rocks as its maker says.`,
        },
        { symbol: 'rack', text: `Burner off. Pressure falls by itself. Weight off, wait 10 min, open away from you. ${COOL}` },
      ]
    default:
      return method satisfies never
  }
}
