import { Facts } from '@/app/_ui/facts'
import { Sheet } from '@/app/_ui/sheet'
import type { JarTrace, TracedLoad } from '@/lib/queries/jar-trace'
import { cannerName } from '@/shared/kitchen/methods'
import { sayShortDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayProcess, sayTimes } from '@/shared/wording/say-load'

/** Every canner load the jar went through: its times, its published process, its canner and its gauge. */
export function LoadsOfJar({ jar: { loads }, seesNames }: { jar: JarTrace; seesNames: boolean }) {
  if (loads.length === 0) {
    return (
      <Sheet lid="flat" title="Canner load">
        <p>It has not been in a canner.</p>
      </Sheet>
    )
  }
  return loads.map((load) => (
    <Sheet
      key={load.code}
      lid={load.state === 'done' ? 'sunk' : 'domed'}
      lidWords={load.state === 'done' ? 'Process met' : load.state.replaceAll('-', ' ')}
      title={`Canner load ${load.code}`}
      aside={loads.length > 1 ? `turn ${load.turn}` : undefined}
    >
      <Facts facts={factsOf(load, seesNames)} />
      {load.processRowKey && load.processMinutes !== null && (
        <p className="src">
          {sayProcess(load.processRowKey, load.processMinutes, load.processPsi)}: {load.processSource};{' '}
          {(load.processEdition ?? '').replace(/\.$/, '')}. Row {load.processRowKey}.
        </p>
      )}
    </Sheet>
  ))
}

function factsOf(load: TracedLoad, seesNames: boolean) {
  const time = (at: number | null) => (at === null ? 'not yet' : formatClock(at))
  return [
    { label: 'Canner', value: `${load.canner}, ${cannerName(load.method)}` },
    { label: 'Gauge', value: gaugeWords(load) },
    ...(seesNames ? [{ label: 'Minded by', value: load.operator ?? 'not written down' }] : []),
    { label: 'Loaded', value: time(load.loadedAt) },
    { label: load.method === 'pressure' ? 'At pressure' : 'At a full boil', value: time(load.atTemperatureAt) },
    { label: 'Heat off', value: time(load.processedAt) },
    { label: 'Emptied', value: time(load.emptiedAt) },
    {
      label: 'Begun again',
      value: load.restarts === 0 ? 'never' : `${sayTimes(load.restarts)}, last lost ${time(load.temperatureLostAt)}`,
    },
  ]
}

function gaugeWords({ gauge, gaugeTestedOn, gaugeErrorPsi }: TracedLoad): string {
  if (gauge === null) return 'none: no pressure'
  if (gauge === 'weighted') return 'weighted: needs no test'
  if (gaugeTestedOn === null) return 'dial, never tested'
  return `dial, tested ${sayShortDate(gaugeTestedOn)}, ${gaugeErrorPsi ?? 0} psi off`
}
