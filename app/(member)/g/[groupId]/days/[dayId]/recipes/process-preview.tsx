import { Notice } from '@/app/_ui/notice'
import { Source } from '@/app/_ui/source'
import { Table } from '@/app/_ui/table'
import { chooseProcess } from '@/shared/day/choose-process'
import { jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { cannerName } from '@/shared/kitchen/methods'
import type { Recipe } from '@/shared/recipes/recipe'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'

const COLUMNS = [
  { key: 'jar', head: 'Jar' },
  { key: 'washed', head: 'Jars washed hot', numeric: true },
  { key: 'published', head: 'Published', numeric: true },
  { key: 'band', head: 'At' },
] as const

/** The published process of a recipe at this elevation, jar by jar; or why there is none. */
export function ProcessPreview({ recipe, elevationFeet }: { recipe: Recipe; elevationFeet: number }) {
  const { process } = recipe
  if (!process) return <Notice {...sayProcessChoice(recipe.title, { kind: 'no-process-held' })} />
  const { method, gauge } = process
  const looked = recipe.jars.map((jarSize) => ({
    jarSize,
    chosen: chooseProcess({ recipe, jarSize, method, gauge, jarTreatment: 'washed-hot', elevationFeet }),
  }))
  const found = looked.flatMap(({ jarSize, chosen }) => (chosen.ok ? [{ jarSize, ...chosen.value }] : []))
  const [refused] = looked.flatMap(({ chosen }) => (chosen.ok ? [] : [chosen.problem]))
  const [first] = found
  if (!first) return refused ? <Notice {...sayProcessChoice(recipe.title, refused)} /> : null
  const rows = found.map(({ jarSize, minutes, published }) => ({
    id: jarSize,
    cells: {
      jar: jarNameWithVolume(jarSize),
      washed: `${minutes} min`,
      published: `${published.minutes} min${published.psi === null ? '' : ` at ${published.psi} psi`}`,
      band: published.band,
    },
  }))
  const { source } = first.published
  return (
    <>
      <h4>Process in a {cannerName(method)}</h4>
      <Table caption="Process by jar" captionHidden columns={COLUMNS} rows={rows} />
      <Source
        what={`${first.published.food}, ${first.published.pack} pack`}
        publication={source.publication}
        part={`${source.edition}, ${source.section}`}
      />
      {first.published.cautions.map((caution) => (
        <p key={caution} className="src">
          {caution}
        </p>
      ))}
    </>
  )
}
