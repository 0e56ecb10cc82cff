import type { Metadata } from 'next'
import Link from 'next/link'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { FINDER, finderAddress } from '@/shared/finder/finder-address'
import { FOODS } from '@/shared/process/food-names'
import '../finder.css'

export const metadata: Metadata = { title: 'All foods of the tables' }

const SECTIONS = [
  { acidity: 'acid', title: 'Acid by itself', words: 'Sour enough for boiling water, steam or pressure where printed.' },
  { acidity: 'acidified', title: 'Made sour', words: 'Only with the acid that the tested recipe or the table names.' },
  { acidity: 'low-acid', title: 'Low-acid', words: 'Pressure canner only, never boiling water.' },
] as const

/** Every food that has a name in the tables, for whoever does not know what to type. */
export default function FoodsPage() {
  const foods = [...FOODS.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'))
  return (
    <Page>
      <PageHead title="All foods of the tables" lead={`${foods.length} foods. What is not here has no time here.`} />
      <div className="two three">
        {SECTIONS.map(({ acidity, title, words }) => (
          <Sheet key={acidity} lid="flat" lidWords="To choose from" title={title}>
            <p>{words}</p>
            <ul className="list">
              {foods
                .filter((food) => food.acidity === acidity)
                .map(({ id, name }) => (
                  <li key={id}>
                    <Link className="way" href={finderAddress(FINDER, { food: name })} prefetch={false}>
                      {name}
                    </Link>
                  </li>
                ))}
            </ul>
          </Sheet>
        ))}
      </div>
    </Page>
  )
}
