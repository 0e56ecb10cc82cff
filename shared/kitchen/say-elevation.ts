import { METRES_PER_FOOT } from '@/shared/process/elevation'

/** "650 ft (198 m)": the published tables' unit first, the other rounded. */
export const sayElevation = (feet: number): string =>
  `${feet.toLocaleString('en-US')} ft (${Math.round(feet * METRES_PER_FOOT).toLocaleString('en-US')} m)`
