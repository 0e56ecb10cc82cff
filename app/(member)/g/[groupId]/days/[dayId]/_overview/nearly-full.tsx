import { MeasureJar } from '@/app/_drawings/measure-jar'
import { Sheet } from '@/app/_ui/sheet'
import type { DayMeasure } from '@/shared/day/day-measures'
import { measureLevel } from '@/shared/drawing/measure-level'
import { jarName } from '@/shared/kitchen/jar-sizes'

/** Everything that can run out, as jars: level is what is needed, room at the top is spare, over the brim is too much. */
export function NearlyFull({ measures }: { measures: readonly DayMeasure[] }) {
  const wants = measures.some(({ needed, available }) => measureLevel(needed, available).over)
  return (
    <Sheet
      lid={wants ? 'domed' : 'sunk'}
      lidWords={wants ? 'Wants you' : 'Enough of everything'}
      title="What is nearly full"
      aside="Level: what is needed. Room at the top: what is spare."
    >
      <div className="measures">
        {measures.map((measure) => (
          <MeasureJar key={measure.kind === 'jars' ? measure.size : measure.kind} {...inWords(measure)} />
        ))}
      </div>
    </Sheet>
  )
}

function inWords(measure: DayMeasure) {
  const { needed, available } = measure
  switch (measure.kind) {
    case 'canners':
      return { label: 'Canners', needed, available, unit: 'minutes' }
    case 'burners':
      return { label: 'Burners', needed, available, unit: 'burners' }
    case 'people':
      return { label: 'People', needed, available, unit: 'people', note: `room for ${Math.max(0, available - needed)}` }
    case 'jars':
      return { label: capital(jarName(measure.size, 2)), needed, available, unit: 'jars' }
    case 'lids':
      return { label: 'Lids', needed, available, unit: 'lids', note: lidNote(measure) }
    default:
      return measure satisfies never
  }
}

/** "24 are too old: buy 8 boxes of 12, 88 with spare." */
function lidNote({ tooOld, boxes, boxOf, withSpare }: Extract<DayMeasure, { kind: 'lids' }>) {
  if (boxes === 0) return `${withSpare} with spare are there`
  const buy = `buy ${boxes} ${boxes === 1 ? 'box' : 'boxes'} of ${boxOf}, ${withSpare} with spare`
  return tooOld > 0 ? `${tooOld} are too old: ${buy}` : buy
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
