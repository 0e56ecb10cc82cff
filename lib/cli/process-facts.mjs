import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'

/** Is there a process of this id? One of another user counts. */
export function isAlive(/** @type {number} */ pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM'
  }
}

/**
 * The command line of a process, or an empty text when it is gone.
 *
 * @param {number} pid
 * @returns {string}
 */
export function commandLineOf(pid) {
  try {
    if (process.platform === 'linux') return readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ').trim()
    return execFileSync('ps', ['-o', 'command=', '-p', String(pid)], { encoding: 'utf8' }).trim()
  } catch {
    return ''
  }
}

/**
 * Waits until a condition holds.
 *
 * @param {() => boolean | Promise<boolean>} condition
 * @param {number} limitMs
 * @returns {Promise<boolean>} false when the time ran out
 */
export async function waitUntil(condition, limitMs, pauseMs = 50) {
  const deadline = Date.now() + limitMs
  while (!(await condition())) {
    if (Date.now() > deadline) return false
    await sleep(pauseMs)
  }
  return true
}

/** Can a server of ours listen on this port? */
export function isPortFree(/** @type {number} */ port, host = '127.0.0.1') {
  return new Promise((resolve) => {
    const probe = createServer()
    probe.once('error', () => resolve(false))
    probe.listen({ port, host, exclusive: true }, () => probe.close(() => resolve(true)))
  })
}

/**
 * A port on loopback that nobody uses right now.
 *
 * @returns {Promise<number>}
 */
export function findFreePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => (address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port was given'))))
    })
  })
}
