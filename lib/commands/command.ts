import 'server-only'
import type { z } from 'zod'
import type { Tx } from '@/lib/db/in-transaction'
import type { Act } from '@/shared/access/policy'
import type { Actor } from '@/shared/access/actor'
import type { Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import type { ShortWay } from './short-way'

/** A plain JSON object: what a command answers, byte for byte the same when the request is repeated. */
export type Reply = { readonly [key: string]: string | number | boolean | null | readonly string[] }

/** One line for the history: about what, with which facts. */
export interface HistoryLine {
  readonly subject: string
  readonly detail: { readonly [key: string]: unknown }
  readonly dayId?: string
}

export interface Outcome {
  readonly reply: Reply
  readonly history: readonly HistoryLine[]
}

/** What a command may lean on while it runs: the open transaction, who asks, and the time, passed in. */
export interface CommandContext {
  readonly tx: Tx
  readonly actor: Actor
  readonly now: Date
}

/** What is known before the transaction is open. */
export type AheadContext = Pick<CommandContext, 'actor' | 'now'>

/**
 * One change of a group's data: who may, what it takes, and how it is done inside one transaction.
 *
 * `householdOf` names the household that the change is for when the input alone says so; when only a row can say it, `run` asks `may` itself.
 */
export interface Command<Input = unknown> {
  readonly name: string
  readonly summary: string
  readonly act: Act
  readonly schema: z.ZodType<Input>
  readonly householdOf?: (input: Input) => string
  readonly run: (context: CommandContext, input: Input) => Promise<Result<Outcome, Refusal>>
  /**
   * Works out what takes longer than a transaction may be kept open, and has it remembered: `run` asks for the same and finds it. Reads, locks
   * and decides nothing; where the day changes in between, `run` works it out again.
   */
  readonly ahead?: (context: AheadContext, input: Input) => Promise<void>
  /** Does the plain case in one statement, where so many ask at once that it counts. */
  readonly shortWay?: ShortWay
}

/** Names a command; exists so that `Input` is inferred from the schema. */
export const defineCommand = <Input>(command: Command<Input>): Command<Input> => command

/** A command whose input type is not known here. `run` is written as a method so that a list may hold commands of every input. */
export interface AnyCommand extends Omit<Command, 'schema' | 'run' | 'ahead' | 'householdOf'> {
  readonly schema: z.ZodType
  run(context: CommandContext, input: never): Promise<Result<Outcome, Refusal>>
  ahead?(context: AheadContext, input: never): Promise<void>
  householdOf?(input: never): string
}
