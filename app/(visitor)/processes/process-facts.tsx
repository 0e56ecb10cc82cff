import type { ReactNode } from 'react'
import { Source } from '@/app/_ui/source'
import { GAUGE_TEST_SOURCE } from '@/shared/kitchen/judge-canner'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { convert } from '@/shared/units/convert'
import { sayAcid, sayHeadspace, sayJars, sayJarVolume, saySource } from '@/shared/wording/say-process'

type Fact = { label: string; value: ReactNode }

/** The conditions under which the minutes hold, as short answers. */
export function processFacts(process: ScheduledProcess): Fact[] {
  const { jar, jarNote, headspaceInches, headspaceNote, acidification, jarRow, packLimits } = process
  const acid = sayAcid(acidification, jarRow, jar)
  return [
    { label: 'Jar', value: <Noted text={`${sayJars(jar)} (${sayJarVolume(jar)})`} note={jarNote} /> },
    { label: 'Headspace', value: <Noted text={sayHeadspace(headspaceInches)} note={headspaceNote} /> },
    { label: 'Acid', value: acid ?? (process.acidity === 'low-acid' ? 'Low-acid food: none makes up for the pressure.' : 'None to add.') },
    { label: 'Empty jars', value: <EmptyJars process={process} /> },
    ...pressure(process),
    ...(packLimits === null ? [] : [{ label: 'Only so', value: packLimits }]),
  ]
}

function pressure({ psi, gauge }: ScheduledProcess): Fact[] {
  const inKilopascals = psi === null ? undefined : convert(psi, 'psi', 'kPa')
  if (!inKilopascals?.ok) return []
  const target = `${psi} psi (${Math.round(inKilopascals.value)} kPa) or a little above, never below`
  if (gauge !== 'dial') return [{ label: 'Pressure', value: target }]
  return [
    { label: 'Pressure', value: target },
    {
      label: 'Dial gauge',
      value: (
        <>
          Tested within a year. One that reads too high or too low by up to 2 psi has its needle target moved by as much; one further off is
          replaced.
          <Source publication={GAUGE_TEST_SOURCE} />
        </>
      ),
    },
  ]
}

function EmptyJars({ process: { sterilise, minutes, minutesWithoutSterilising } }: { process: ScheduledProcess }) {
  if (!sterilise.required) return 'Clean and hot; no boiling beforehand.'
  return (
    <>
      <b>Boil them {sterilise.minutes} min first.</b>
      {minutesWithoutSterilising !== null && (
        <>
          {' '}
          Or only wash them, and process the filled jars {minutesWithoutSterilising} min instead of {minutes}.
        </>
      )}
      <Source publication={saySource(sterilise.source)} />
    </>
  )
}

function Noted({ text, note }: { text: string; note: string | null }) {
  return (
    <>
      {text}
      {note !== null && <Source>{note}</Source>}
    </>
  )
}
