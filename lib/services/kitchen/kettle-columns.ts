import 'server-only'
import type { AddKettle } from '@/shared/forms/equipment'

/** Litres as typed become whole millilitres, as kept. */
export function kettleColumns({ litres, label, material, keptFor, outOfUse }: Omit<AddKettle, 'kitchenId'>) {
  return { label, material, keptFor, outOfUse, millilitres: Math.round(litres * 1000) }
}
