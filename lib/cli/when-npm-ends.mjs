const LOOK_MS = 500

/**
 * Calls back when npm, which runs us through a shell, was told to end: the shell dies of the signal and does not pass it on.
 * Started without npm, we may well outlive our parent, so nothing is watched.
 *
 * @param {() => void} callback
 */
export function whenNpmEnds(callback) {
  if (!process.env.npm_lifecycle_event) return
  const parent = process.ppid
  const look = setInterval(() => {
    if (process.ppid === parent) return
    clearInterval(look)
    callback()
  }, LOOK_MS)
  look.unref()
}
