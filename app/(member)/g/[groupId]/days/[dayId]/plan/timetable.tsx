import { WallChart } from '@/app/_drawings/wall-chart'
import { Sheet } from '@/app/_ui/sheet'
import { wallChart } from '@/shared/planning/wall-chart'
import { sayCannerMinutes, sayFinish, sayShortage } from '@/shared/wording/say-plan'
import { ProcessSources } from '../_overview/canner-time'
import { type Planned, producePatterns } from '../plan-drawing'
import { HowItMayGo } from './how-it-may-go'
import { NightBefore } from './night-before'
import { PersonLists } from './person-lists'
import { stepsOf } from './steps'
import { StationLists } from './station-lists'

/** A plan to read: as a chart, by station, by person, with what must be done the evening before. */
export function Timetable({ problem, plan, planPath, asksWhoMayMiss }: Planned & { planPath?: string; asksWhoMayMiss?: boolean }) {
  return (
    <>
      <NightBefore problem={problem} plan={plan} />
      <Sheet lid="sunk" lidWords="Planned" title="Station by station" aside={sayCannerMinutes(plan)}>
        <WallChart
          chart={wallChart(problem, plan)}
          produceOf={producePatterns(problem)}
          steps={stepsOf({ problem, plan })}
          says={sayFinish(problem, plan)}
        />
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
      <StationLists problem={problem} plan={plan} />
      <PersonLists problem={problem} plan={plan} />
    </>
  )
}
