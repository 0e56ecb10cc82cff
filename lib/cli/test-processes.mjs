import { spawn } from 'node:child_process'
import { projectRoot } from './project-paths.mjs'
import { ended } from './run-logged.mjs'

const STOP_MS = 30_000

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set()

/**
 * Runs a command of the tests with its output on ours.
 *
 * @param {string[]} args - of Node
 * @param {NodeJS.ProcessEnv} [env]
 */
export async function runTestCommand(args, env = process.env) {
  return ended(startTestProcess(args, env))
}

/**
 * Starts a process that is ended with us.
 *
 * @param {string[]} args - of Node
 * @param {NodeJS.ProcessEnv} env
 */
export function startTestProcess(args, env) {
  const child = spawn(process.execPath, args, { cwd: projectRoot, env, stdio: ['ignore', 'inherit', 'inherit'] })
  running.add(child)
  child.once('exit', () => running.delete(child))
  return child
}

/** Ends a process in good order, or by force when it does not follow. */
export async function stopTestProcess(/** @type {import('node:child_process').ChildProcess} */ child) {
  if (child.exitCode !== null || child.signalCode !== null) return
  const gone = ended(child)
  child.kill('SIGTERM')
  const force = setTimeout(() => child.kill('SIGKILL'), STOP_MS)
  await gone
  clearTimeout(force)
}

/** Ends everything that the tests started. */
export async function stopTestProcesses() {
  await Promise.all([...running].map(stopTestProcess))
}
