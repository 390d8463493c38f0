import { describe, expect, it } from 'vitest'
import { type NoteLog, noteAnswer, noteEntries } from '#tests/server/event-log/notes.ts'

const lunch = 'lunch'
const supper = 'supper'

/** What every log does with an append to several streams. */
export const registerSeveral = (kind: string, opened: () => NoteLog): void => {
  describe(`the ${kind} log, appending to several`, () => {
    const both = (lunchAfter: number, supperAfter: number) =>
      [
        {
          service: lunch,
          after: lunchAfter,
          entries: noteEntries(lunchAfter + 1, lunchAfter + 2),
          answers: [noteAnswer(`set aside ${lunchAfter}`)],
        },
        {
          service: supper,
          after: supperAfter,
          entries: noteEntries(supperAfter + 1, supperAfter + 1),
          answers: [noteAnswer(`taken ${supperAfter}`)],
        },
      ] as const

    it('[L31] what goes to several is one commit, and each is told of its own', async () => {
      const log = opened()
      const told: (readonly [string, number])[] = []
      log.onAdvance((service, position) => told.push([service, position]))
      expect(await log.appendAll(both(0, 0), [{ key: 'lot:a', expected: 0 }])).toBe('committed')
      expect(await log.read(lunch, 0)).toEqual(noteEntries(1, 2))
      expect(await log.read(supper, 0)).toEqual(noteEntries(1, 1))
      expect(await log.answerTo(supper, 'taken 0')).toEqual(noteAnswer('taken 0'))
      expect(told).toEqual([
        [lunch, 2],
        [supper, 1],
      ])
      expect([log.commits(), await log.services()]).toEqual([1, [lunch, supper]])
    })

    it.each([
      ['the first moved on', both(3, 1), []],
      ['the second moved on', both(2, 0), []],
      ['a guard is at another version', both(2, 1), [{ key: 'lot:a', expected: 0 }]],
    ])('[L31] nothing of it is there where %s', async (_, appends, guards) => {
      const log = opened()
      await log.appendAll(both(0, 0), [{ key: 'lot:a', expected: 0 }])
      const own = [{ key: 'lot:b', expected: 0 }, ...guards]
      expect(await log.appendAll([appends[0], appends[1]], own)).toBe('conflict')
      expect([await log.head(lunch), await log.head(supper)]).toEqual([2, 1])
      expect([await log.guard('lot:a'), await log.guard('lot:b'), log.commits()]).toEqual([1, 0, 1])
      expect(await log.answerTo(lunch, `set aside ${appends[0].after}`)).toBeNull()
    })

    it('[L31] nothing of it is there where the second has such an answer', async () => {
      const log = opened()
      await log.append(supper, 0, [], [noteAnswer('taken 0')])
      expect(await log.appendAll(both(0, 0))).toBe('conflict')
      expect([await log.head(lunch), await log.services()]).toEqual([0, []])
    })

    it('[L31] one stream twice, or a gap in the second, is a fault', async () => {
      const log = opened()
      const [first, second] = both(0, 0)
      await expect(log.appendAll([first, first])).rejects.toThrow(RangeError)
      const gap = { ...second, entries: noteEntries(2, 2) }
      await expect(log.appendAll([first, gap])).rejects.toThrow(RangeError)
      expect([await log.head(lunch), await log.head(supper), log.commits()]).toEqual([0, 0, 0])
    })
  })
}
