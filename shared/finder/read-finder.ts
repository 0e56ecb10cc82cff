import { type FinderField, ProcessFinder } from '@/shared/forms/process-finder'
import { type AddressFields, type AddressProblem, type AddressRead, readAddress } from '@/shared/forms/read-address'
import type { Result } from '@/shared/result/result'

/** A question to the finder as read from its address. */
export type FinderRead = AddressRead<FinderField, ProcessFinder>

/** What was typed, by field, so that nobody types it twice. */
export type FinderTyped = FinderRead['typed']

/** Reads a question to the finder strictly; see `readAddress`. */
export const readFinder = (address: AddressFields): Result<FinderRead, AddressProblem> => readAddress(ProcessFinder, address)
