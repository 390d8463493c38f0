/**
 * Runs the tests of one file as vitest would, in their order and up to the first that fails. It
 * knows what our tests use and throws at anything else.
 */
import { expect } from 'vitest'

type Body = (context: object, ...more: readonly unknown[]) => unknown
type Hook = () => unknown

interface Group {
  readonly above: Group | null
  readonly before: Hook[]
  readonly after: Hook[]
  readonly beforeEach: Hook[]
  readonly afterEach: Hook[]
  readonly held: (Group | { readonly title: string; readonly body: () => unknown })[]
}

const groupIn = (above: Group | null): Group => ({
  above,
  before: [],
  after: [],
  beforeEach: [],
  afterEach: [],
  held: [],
})

class Skipped extends Error {}

const skip = (): never => {
  throw new Skipped()
}

const bodyAmong = (given: readonly unknown[]): Body => {
  const body = given.find((one): one is Body => typeof one === 'function')
  if (!body) throw new Error('a test without a body')
  return body
}

export const createTestFile = () => {
  const top = groupIn(null)
  let group = top
  let finished: Hook[] = []
  let done = 0

  const context = { skip, expect, onTestFinished: (hook: Hook) => finished.push(hook) }
  const test = (title: string, ...given: readonly unknown[]): void => {
    const body = bodyAmong(given)
    group.held.push({ title, body: () => body(context) })
  }
  const each =
    (rows: readonly unknown[]) =>
    (title: string, ...given: readonly unknown[]): void => {
      const body = bodyAmong(given) as (...row: readonly unknown[]) => unknown
      for (const row of rows)
        group.held.push({
          title,
          body: () => (Array.isArray(row) ? body(...row) : body(row)),
        })
    }
  const skipIf = (isSkipped: boolean) => (isSkipped ? () => undefined : test)
  const describe = (_title: string, ...given: readonly unknown[]): void => {
    const body = bodyAmong(given)
    const inner = groupIn(group)
    group.held.push(inner)
    group = inner
    body({})
    group = inner.above ?? top
  }
  const it = Object.assign(test, { each, skipIf })

  const upwards = (from: Group, hooks: 'beforeEach' | 'afterEach'): readonly Hook[] => [
    ...(from.above ? upwards(from.above, hooks) : []),
    ...from[hooks],
  ]

  const runAll = async (hooks: readonly Hook[]): Promise<void> => {
    for (const hook of hooks) await hook()
  }

  const runGroup = async (of: Group): Promise<void> => {
    await runAll(of.before)
    for (const one of of.held) {
      if ('held' in one) {
        await runGroup(one)
        continue
      }
      finished = []
      try {
        await runAll(upwards(of, 'beforeEach'))
        await one.body()
      } catch (problem) {
        if (!(problem instanceof Skipped)) throw new Error(`${one.title}: ${String(problem)}`)
      } finally {
        await runAll([...upwards(of, 'afterEach'), ...finished.reverse()])
      }
      done += 1
    }
    await runAll(of.after)
  }

  return {
    /** In place of vitest's. */
    words: {
      it,
      test: it,
      describe,
      beforeAll: (hook: Hook) => group.before.push(hook),
      afterAll: (hook: Hook) => group.after.push(hook),
      beforeEach: (hook: Hook) => group.beforeEach.push(hook),
      afterEach: (hook: Hook) => group.afterEach.push(hook),
      onTestFinished: (hook: Hook) => finished.push(hook),
    },
    /** @throws what the first failing test or hook throws. */
    run: () => runGroup(top),
    done: () => done,
  }
}
