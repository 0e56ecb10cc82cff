const REPEAT_SECONDS = 10

/**
 * Runs one piece of work and says so: a line when it begins, a line every ten seconds while it lasts, and its time at the end.
 *
 * @template T
 * @param {string} title - what is being done, as a sentence begins: "Installing packages"
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function showProgress(title, work) {
  const startedAt = Date.now()
  const seconds = () => ((Date.now() - startedAt) / 1000).toFixed(1)
  console.log(`  ${title} …`)
  const repeat = setInterval(() => console.log(`  ${title} … ${Math.round(Number(seconds()))} s so far`), REPEAT_SECONDS * 1000)
  try {
    const result = await work()
    console.log(`  ${title}: ${seconds()} s`)
    return result
  } catch (error) {
    console.log(`  ${title}: failed after ${seconds()} s`)
    throw error
  } finally {
    clearInterval(repeat)
  }
}
