import type { ProcessCardFacts } from '@/app/_drawings/process-card'
import { type BandFigure, bandTable } from '@/shared/finder/band-table'
import { cardSteps, stepSources } from '@/shared/finder/card-steps'
import { knownAllergens } from '@/shared/finder/known-allergens'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { sayShortDate } from '@/shared/time/calendar-date'
import { capitalised, sayBand, sayCanner, sayHeadspace, sayHeat, sayJars, sayJarVolume, saySource } from '@/shared/wording/say-process'

/** A printed process in the words of the card. */
export function cardFacts(process: ScheduledProcess): ProcessCardFacts {
  const { food, pack, jar, minutes, method, gauge, elevationFeet, source, tablesAsOf } = process
  const band = { minFeet: process.bandMinFeet, maxFeet: process.bandMaxFeet }
  return {
    product: food,
    pack: capitalised(`${pack} pack`),
    jar: sayJars(jar),
    volume: sayJarVolume(jar),
    minutes,
    heat: sayHeat(process),
    canner: `${sayCanner(method, gauge)}, ${sayBand(band)}`,
    place: `This kitchen is at ${sayElevation(elevationFeet)}`,
    headspace: sayHeadspace(process.headspaceInches),
    ...tableFacts(process),
    steps: cardSteps(process),
    lost: whatIfLost(process),
    contains: allergenFacts(process.foodId),
    cautions: [process.jarNote, process.headspaceNote, process.packLimits, ...process.cautions.slice(0, -1)].filter(
      (line) => line !== null,
    ),
    source: (
      <>
        {saySource(source)}, band printed “{process.band}”. Compared on {sayShortDate(tablesAsOf)}. Steps: {stepSources(process)}.
        Finger-tight band, starting again: common practice.
      </>
    ),
  }
}

function tableFacts(process: ScheduledProcess): Pick<ProcessCardFacts, 'jars' | 'bands'> {
  const table = bandTable(process)
  return {
    jars: table.jars.map((jar) => capitalised(jarName(jar))),
    bands: table.rows.map(({ band, isHere, figures }) => ({ band: sayBand(band), here: isHere, figures: figures.map(sayFigure) })),
  }
}

function sayFigure(figure: BandFigure): string {
  if (figure === null) return 'no time'
  return figure.psi === null ? `${figure.minutes} min` : `${figure.minutes} min, ${figure.psi} psi`
}

function whatIfLost({ method, minutes, psi }: ScheduledProcess): ProcessCardFacts['lost'] {
  const again = `${minutes} minutes again.`
  const text = 'Never top up the time that was missing.'
  switch (method) {
    case 'boiling-water':
      return { bold: `Boil lost? Start the full ${again}`, text }
    case 'atmospheric-steam':
      return { bold: `Steam lost? Start the full ${again}`, text }
    case 'pressure':
      return { bold: `Below ${psi} psi? Back to pressure, then the full ${again}`, text }
    default:
      return method satisfies never
  }
}

function allergenFacts(foodId: string): ProcessCardFacts['contains'] {
  const { always, sometimes } = knownAllergens(foodId)
  if (always.length > 0) return { bold: `Contains ${always.join(' and ')}.`, text: 'Check who works here.' }
  if (sometimes.length > 0) return { bold: `May contain ${sometimes.join(' or ')}.`, text: 'Read the recipe; check who works here.' }
  return undefined
}
