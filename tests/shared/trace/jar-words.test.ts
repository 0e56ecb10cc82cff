import { describe, expect, it } from 'vitest'
import { JAR_MOVES, type JarState } from '@/shared/lifecycle/jar-states'
import { adviceFor, DID_NOT_SEAL, DO_NOT_TASTE, jarStateWords, judgeJar } from '@/shared/trace/jar-words'
import { labelPattern } from '@/shared/trace/label-pattern'

describe('what a jar’s state means to whoever holds it', () => {
  it.each([
    ['filled', 'not-ready', 'filled, not processed yet'],
    ['processed', 'not-ready', 'processed, seal not checked yet'],
    ['sealed', 'good', 'sealed, in the store'],
    ['unsealed', 'not-for-the-shelf', 'not sealed'],
    ['shared-out', 'good', 'handed over'],
    ['opened', 'not-for-the-shelf', 'opened'],
    ['held', 'on-hold', 'on hold'],
    ['recalled', 'recalled', 'called back'],
    ['discarded', 'gone', 'thrown out'],
    ['broken', 'gone', 'broke'],
  ] as const)('%s is %s, "%s"', (state, verdict, words) => {
    expect(judgeJar(state)).toBe(verdict)
    expect(jarStateWords(state)).toBe(words)
  })

  it('is said of every state', () => {
    for (const state of Object.keys(JAR_MOVES) as JarState[]) expect(jarStateWords(state)).toBeTruthy()
  })

  it('lets nobody taste a jar that is not good, and tells an unsealed one from a bad one', () => {
    expect(adviceFor('not-for-the-shelf')).toBe(DID_NOT_SEAL)
    for (const verdict of ['on-hold', 'recalled', 'gone', 'not-ready', 'good'] as const) expect(adviceFor(verdict)).toBe(DO_NOT_TASTE)
    expect(DO_NOT_TASTE).toEqual({
      words: expect.stringMatching(/^Do not open it and do not taste it\. Bag it .* leave it and ask the group\.$/),
      source: expect.stringMatching(/^USDA Complete Guide to Home Canning, AIB No\. 539 \(1994\)/),
    })
    expect(DID_NOT_SEAL).toEqual({
      words: expect.stringMatching(/^It did not seal\. .*refrigerator since its seal check.*do not taste it: throw it out/),
      source: expect.stringMatching(/^Michigan State University Extension.*Reprocessing unsealed jars$/),
    })
  })
})

describe('the pattern on a label', () => {
  it.each([
    ['plum', 'solid'],
    ['dill', 'hatch'],
    ['tomato', 'dots'],
    ['peach', 'bars'],
    ['bean', 'cross'],
    ['other', 'plain'],
    [undefined, 'plain'],
  ])('of %s is %s', (produce, pattern) => {
    expect(labelPattern(produce)).toBe(pattern)
  })
})
