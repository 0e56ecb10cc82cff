import { spawn } from 'node:child_process'
import { closeSync, mkdirSync, openSync, readFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { projectRoot } from './project-paths.mjs'

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set()

/** A command of ours ended with an error; the message holds the end of what it printed. */
export class CommandFailed extends Error {}

/**
 * Runs a command with its output in a file, and shows the end of that file when the command fails.
 *
 * @param {string} command
 * @param {string[]} args
 * @param {{ logFile: string, env?: NodeJS.ProcessEnv }} options
 * @returns {Promise<void>}
 */
export async function runLogged(command, args, { logFile, env = process.env }) {
  mkdirSync(dirname(logFile), { recursive: true })
  const log = openSync(logFile, 'w')
  const child = spawn(command, args, { cwd: projectRoot, env, stdio: ['ignore', log, log] })
  running.add(child)
  try {
    const code = await ended(child)
    if (code !== 0) throw new CommandFailed(`${command} ${args.join(' ')} ended with ${code}\n${lastLines(logFile)}\nAll of it: ${logFile}`)
  } finally {
    running.delete(child)
    closeSync(log)
  }
}

/** Ends the commands that still run, so that none outlives us. */
export function stopRunningCommands() {
  for (const child of running) child.kill('SIGTERM')
}

/**
 * The exit code of a child, or the signal that ended it.
 *
 * @param {import('node:child_process').ChildProcess} child
 * @returns {Promise<number | string>}
 */
export function ended(child) {
  return new Promise((resolve, reject) => {
    child.once('error', reject)
    child.once('exit', (code, signal) => resolve(code ?? signal ?? 'unknown'))
  })
}

/**
 * The end of a text file, for an error message.
 *
 * @param {string} file
 * @param {number} [count]
 */
export function lastLines(file, count = 40) {
  try {
    return readFileSync(file, 'utf8').trimEnd().split('\n').slice(-count).join('\n')
  } catch {
    return ''
  }
}
