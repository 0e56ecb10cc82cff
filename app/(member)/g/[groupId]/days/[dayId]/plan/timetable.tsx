import { WallChart } from '@/app/_drawings/wall-chart'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { wallChart } from '@/shared/planning/wall-chart'
import { partLoads } from '@/shared/planning/part-loads'
import { sayPartLoad } from '@/shared/wording/say-part-loads'
import { sayCannerMinutes, sayFinish, sayShortage } from '@/shared/wording/say-plan'
import { ProcessSources } from '../_overview/canner-time'
import { type Planned, producePatterns } from '../plan-drawing'
import { HowItMayGo } from './how-it-may-go'
import { NightBefore } from './night-before'
import { Lists } from './lists'

type Props = Planned & Pick<Parameters<typeof Lists>[0], 'list' | 'address'> & { planPath?: string; asksWhoMayMiss?: boolean }

/** A plan to read: as a chart and in words, with what must be done the evening before. */
export function Timetable({ problem, plan, list, address, planPath, asksWhoMayMiss }: Props) {
  return (
    <>
      <NightBefore problem={problem} plan={plan} />
      <Sheet lid="sunk" lidWords="Planned" title="Station by station" aside={sayCannerMinutes(plan)}>
        <WallChart
          chart={wallChart(problem, plan)}
          produceOf={producePatterns(problem)}
          listHref={`${address({ list: 'all' })}#list`}
          says={sayFinish(problem, plan)}
        />
        <PartLoads problem={problem} plan={plan} />
        <ProcessSources problem={problem} />
      </Sheet>
      <HowItMayGo {...{ problem, plan, planPath, asksWhoMayMiss }} />
      {plan.shortages.length > 0 && (
        <Sheet lid="domed" title="Work that found no hands">
          <ul className="list">
            {plan.shortages.map((shortage) => (
              <li key={JSON.stringify(shortage)}>{sayShortage(problem, shortage)}</li>
            ))}
          </ul>
        </Sheet>
      )}
      <Lists {...{ problem, plan, list, address }} />
    </>
  )
}

/** Canners that run with free places, each with its reason. */
function PartLoads({ problem, plan }: Planned) {
  const parts = partLoads(problem, plan)
  if (parts.length === 0) return null
  return (
    <Fold summary="Why some loads are not full">
      <ul className="list">
        {parts.map((part) => (
          <li key={JSON.stringify(part)}>{sayPartLoad(problem, part)}</li>
        ))}
      </ul>
    </Fold>
  )
}
