import fc from 'fast-check'
import { describe, expect, it, onTestFinished } from 'vitest'
import { registerSeveral } from '#tests/server/event-log/contract-several.ts'
import {
  type NoteAnswer,
  type NoteEntry,
  type NoteLog,
  noteAnswer,
  noteEntries,
  noteEntry,
} from '#tests/server/event-log/notes.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'

const lunch = 'lunch'
const supper = 'supper'

/** What every log does, whatever keeps it. `open` gives a new, empty log. */
export const registerLogContract = (kind: string, open: () => NoteLog): void => {
  const opened = (): NoteLog => {
    const log = open()
    onTestFinished(() => log.close())
    return log
  }

  describe(`the ${kind} log, appending`, () => {
    it('[L1] entries are read back as they were appended, in order', async () => {
      const log = opened()
      expect(await log.append(lunch, 0, noteEntries(1, 2), [])).toBe('committed')
      expect(await log.append(lunch, 2, noteEntries(3, 3), [])).toBe('committed')
      expect(await log.read(lunch, 0)).toEqual(noteEntries(1, 3))
      expect(await log.head(lunch)).toBe(3)
    })

    it('[L1] words in any script, quotes and line breaks come back to the letter', async () => {
      const log = opened()
      const note = 'jalapeño "hot"\n\t{}\\ 辣 🌶 \u2028 \u0000 end'
      await log.append(lunch, 0, [noteEntry(1, note)], [])
      expect(await log.read(lunch, 0)).toEqual([noteEntry(1, note)])
    })

    it('[L1] what the caller does later to an appended object changes nothing', async () => {
      const log = opened()
      const entry = { ...noteEntry(1, 'as it was') }
      await log.append(lunch, 0, [entry], [])
      entry.note = 'changed'
      const [read] = await log.read(lunch, 0)
      expect(read).toEqual(noteEntry(1, 'as it was'))
      Object.assign(read ?? {}, { note: 'changed again' })
      expect(await log.read(lunch, 0)).toEqual([noteEntry(1, 'as it was')])
    })

    it('[L2] positions count in each service for itself', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 2), [])
      await log.append(supper, 0, noteEntries(1, 1), [])
      await log.append(lunch, 2, noteEntries(3, 3), [])
      expect([await log.head(lunch), await log.head(supper)]).toEqual([3, 1])
      expect(await log.read(supper, 0)).toEqual(noteEntries(1, 1))
    })

    it.each([
      ['at 1 in place of 2', 1, [noteEntry(1)]],
      ['a gap before the first', 1, [noteEntry(3)]],
      ['a gap between two', 1, [noteEntry(2), noteEntry(4)]],
      ['the same twice', 1, [noteEntry(2), noteEntry(2)]],
      ['backwards', 1, [noteEntry(3), noteEntry(2)]],
    ])('[L3] positions that do not follow are a fault: %s', async (_, after, entries) => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [])
      await expect(log.append(lunch, after, entries, [noteAnswer('late', 2)])).rejects.toThrow(
        RangeError,
      )
      expect(await log.read(lunch, 0)).toEqual(noteEntries(1, 1))
      expect(await log.answerTo(lunch, 'late')).toBeNull()
      expect(await log.append(lunch, 1, noteEntries(2, 2), [])).toBe('committed')
    })

    it.each([-1, 0.5, Number.NaN])('[L3] an append after %d is a fault', async (after) => {
      await expect(opened().append(lunch, after, [], [noteAnswer('a')])).rejects.toThrow(RangeError)
    })

    it('[L3] two answers to one command in one append are a fault', async () => {
      const log = opened()
      await expect(
        log.append(lunch, 0, noteEntries(1, 1), [noteAnswer('a', 1), noteAnswer('a', 2)]),
      ).rejects.toThrow(RangeError)
      expect(await log.head(lunch)).toBe(0)
    })

    it.each([0, 1, 3, 9])(
      '[L4] an append after %d where the head is 2 is a conflict',
      async (after) => {
        const log = opened()
        await log.append(lunch, 0, noteEntries(1, 2), [])
        const entries = noteEntries(after + 1, after + 2, 'late')
        expect(await log.append(lunch, after, entries, [noteAnswer('late')])).toBe('conflict')
        expect(await log.read(lunch, 0)).toEqual(noteEntries(1, 2))
        expect(await log.answerTo(lunch, 'late')).toBeNull()
        expect(log.commits()).toBe(1)
      },
    )

    it('[L4] answers alone conflict as well when the service has moved on', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 2), [])
      expect(await log.append(lunch, 1, [], [noteAnswer('late')])).toBe('conflict')
      expect(await log.answerTo(lunch, 'late')).toBeNull()
    })

    it('[L5] an append with a known command id is a conflict, and none of it is written', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [noteAnswer('first', 1)])
      const answers = [noteAnswer('second', 2), noteAnswer('first', 9, 'other print')]
      expect(await log.append(lunch, 1, noteEntries(2, 3), answers)).toBe('conflict')
      expect(await log.head(lunch)).toBe(1)
      expect(await log.answerTo(lunch, 'second')).toBeNull()
      expect(await log.answerTo(lunch, 'first')).toEqual(noteAnswer('first', 1))
    })

    it('[L5] the same command id in another service is another command', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [noteAnswer('first', 1)])
      expect(await log.append(supper, 0, [], [noteAnswer('first', 7)])).toBe('committed')
      expect(await log.answerTo(lunch, 'first')).toEqual(noteAnswer('first', 1))
      expect(await log.answerTo(supper, 'first')).toEqual(noteAnswer('first', 7))
    })

    it('[L6] an answer is kept with its fingerprint, also without entries', async () => {
      const log = opened()
      expect(await log.append(lunch, 0, [], [noteAnswer('refused', 0)])).toBe('committed')
      expect(await log.answerTo(lunch, 'refused')).toEqual(noteAnswer('refused', 0))
      expect(await log.answerTo(lunch, 'never sent')).toBeNull()
      expect(await log.head(lunch)).toBe(0)
      expect(log.commits()).toBe(1)
    })

    it('[L6] an append of nothing writes nothing', async () => {
      const log = opened()
      expect(await log.append(lunch, 0, [], [])).toBe('committed')
      expect(await log.append(lunch, 4, [], [])).toBe('conflict')
      expect([log.commits(), await log.services()]).toEqual([0, []])
    })
  })

  describe(`the ${kind} log, guarding`, () => {
    const open = (expected: number) => [{ key: 'open:line', expected }]

    it('[L28] a guard is raised by one with what it guards, over services', async () => {
      const log = opened()
      expect(await log.guard('open:line')).toBe(0)
      expect(await log.append(lunch, 0, noteEntries(1, 1), [], open(0))).toBe('committed')
      expect(await log.append(supper, 0, noteEntries(1, 1), [], open(1))).toBe('committed')
      expect([await log.guard('open:line'), await log.guard('open:other')]).toEqual([2, 0])
      expect(await log.guards()).toEqual(['open:line'])
    })

    it.each([0, 2, 9])('[L28] at 1, one that expects %d is a conflict', async (expected) => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [], open(0))
      const guards = [{ key: 'open:other', expected: 0 }, ...open(expected)]
      const answers = [noteAnswer('late')]
      expect(await log.append(supper, 0, noteEntries(1, 2), answers, guards)).toBe('conflict')
      expect([await log.guard('open:line'), await log.guard('open:other')]).toEqual([1, 0])
      expect([await log.head(supper), await log.services()]).toEqual([0, [lunch]])
      expect(await log.answerTo(supper, 'late')).toBeNull()
      expect(log.commits()).toBe(1)
    })

    it('[L28] an append that conflicts by its position or a command raises no guard', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [noteAnswer('first', 1)])
      expect(await log.append(lunch, 0, noteEntries(1, 1), [], open(0))).toBe('conflict')
      expect(await log.append(lunch, 1, [], [noteAnswer('first')], open(0))).toBe('conflict')
      expect(await log.guard('open:line')).toBe(0)
    })

    it('[L29] guards alone are an append: a commit, and nobody is told of a new position', async () => {
      const log = opened()
      const told: string[] = []
      log.onAdvance((service) => told.push(service))
      expect(await log.append(lunch, 0, [], [], open(0))).toBe('committed')
      expect(await log.append(lunch, 0, [], [], open(0))).toBe('conflict')
      expect([await log.guard('open:line'), log.commits(), told]).toEqual([1, 1, []])
    })

    it('[L29] a key given twice is raised twice, each expected one higher', async () => {
      const log = opened()
      expect(await log.append(lunch, 0, [], [], [...open(0), ...open(1)])).toBe('committed')
      expect(await log.guard('open:line')).toBe(2)
      expect(await log.append(lunch, 0, [], [], [...open(1), ...open(2)])).toBe('conflict')
      expect(await log.guard('open:line')).toBe(2)
    })

    it.each([
      ['the same version twice', [...open(0), ...open(0)]],
      ['a version left out', [...open(0), ...open(2)]],
      ['below 0', open(-1)],
      ['no whole number', open(0.5)],
    ])('[L29] guards that can not hold are a fault: %s', async (_, guards) => {
      const log = opened()
      const append = log.append(lunch, 0, noteEntries(1, 1), [], guards)
      await expect(append).rejects.toThrow(RangeError)
      expect([await log.head(lunch), await log.guard('open:line')]).toEqual([0, 0])
    })

    it('[L29] erasing a service leaves the guards as they are', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [], open(0))
      await log.erase([lunch])
      expect(await log.guard('open:line')).toBe(1)
    })
  })

  registerSeveral(kind, opened)

  describe(`the ${kind} log, reading`, () => {
    it.each([
      [0, undefined, 1, 5],
      [2, undefined, 3, 5],
      [0, 2, 1, 2],
      [3, 9, 4, 5],
      [5, undefined, 6, 5],
      [99, undefined, 1, 0],
      [0, 0, 1, 0],
    ])('[L7] after %s with limit %s, from %s to %s', async (after, limit, from, to) => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 5), [])
      expect(await log.read(lunch, after, limit)).toEqual(noteEntries(from, to))
    })

    it('[L7] a service nobody wrote to has no entries and head 0', async () => {
      const log = opened()
      expect([await log.read(lunch, 0), await log.head(lunch)]).toEqual([[], 0])
    })

    it('[L8] services are listed by their first entry, not by name or by answers', async () => {
      const log = opened()
      await log.append('zebra', 0, [], [noteAnswer('refused', 0)])
      await log.append('supper', 0, noteEntries(1, 1), [])
      await log.append('lunch', 0, noteEntries(1, 1), [])
      await log.append('supper', 1, noteEntries(2, 2), [])
      expect(await log.services()).toEqual(['supper', 'lunch'])
      await log.append('zebra', 0, noteEntries(1, 1), [])
      expect(await log.services()).toEqual(['supper', 'lunch', 'zebra'])
    })
  })

  describe(`the ${kind} log, erasing`, () => {
    it('[L27] takes services with their entries and answers, and leaves the others', async () => {
      const log = opened()
      await log.append(supper, 0, noteEntries(1, 3), [noteAnswer('first', 1)])
      await log.append(lunch, 0, noteEntries(1, 2), [noteAnswer('first', 2)])
      await log.append('brunch', 0, [], [noteAnswer('refused', 0)])
      await log.erase([supper, 'brunch', 'never'])
      expect([await log.read(supper, 0), await log.head(supper)]).toEqual([[], 0])
      expect(await log.answerTo(supper, 'first')).toBeNull()
      expect(await log.answerTo('brunch', 'refused')).toBeNull()
      expect(await log.services()).toEqual([lunch])
      expect(await log.read(lunch, 0)).toEqual(noteEntries(1, 2))
      expect(await log.answerTo(lunch, 'first')).toEqual(noteAnswer('first', 2))
      expect(await log.append(supper, 0, noteEntries(1, 1), [])).toBe('committed')
      expect(await log.services()).toEqual([lunch, supper])
    })
  })

  describe(`the ${kind} log, telling`, () => {
    it('[L9] a listener is told the new head of each append that has entries', async () => {
      const log = opened()
      const told: (readonly [string, number])[] = []
      const stop = log.onAdvance((service, position) => told.push([service, position]))
      await log.append(lunch, 0, noteEntries(1, 3), [])
      await log.append(lunch, 0, noteEntries(1, 1), [])
      await log.append(lunch, 3, [], [noteAnswer('refused')])
      await log.append(supper, 0, noteEntries(1, 1), [])
      stop()
      await log.append(supper, 1, noteEntries(2, 2), [])
      expect(told).toEqual([
        [lunch, 3],
        [supper, 1],
      ])
    })

    it('[L9] a listener finds the entries in the log already', async () => {
      const log = opened()
      const heads: Promise<number>[] = []
      log.onAdvance((service) => heads.push(log.head(service)))
      await log.append(lunch, 0, noteEntries(1, 2), [])
      expect(await Promise.all(heads)).toEqual([2])
    })

    it('[L9] one listener given twice is told twice, and each is stopped alone', async () => {
      const log = opened()
      let told = 0
      const listener = () => {
        told += 1
      }
      const stop = log.onAdvance(listener)
      log.onAdvance(listener)
      await log.append(lunch, 0, noteEntries(1, 1), [])
      stop()
      stop()
      await log.append(lunch, 1, noteEntries(2, 2), [])
      expect(told).toBe(3)
    })

    it('[L10] commits count the appends that wrote something', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 30), [noteAnswer('a'), noteAnswer('b')])
      await log.append(lunch, 30, [], [noteAnswer('c')])
      await log.append(lunch, 7, noteEntries(8, 8), [])
      expect(log.commits()).toBe(2)
    })

    it('[L10] a closed log takes nothing more, and may be closed again', async () => {
      const log = opened()
      await log.append(lunch, 0, noteEntries(1, 1), [])
      await log.close()
      await expect(log.append(lunch, 1, noteEntries(2, 2), [])).rejects.toThrow()
      await expect(log.read(lunch, 0)).rejects.toThrow()
      await log.close()
    })
  })

  it(`[L1] the ${kind} log answers any run of appends as a plain memory does`, async () => {
    const append = fc.record({
      service: fc.constantFrom(lunch, supper),
      behind: fc.constantFrom(0, 0, 0, 0, 1, -1),
      entries: fc.integer({ min: 0, max: 3 }),
      commands: fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'), { maxLength: 2 }),
    })
    await fc.assert(
      fc.asyncProperty(fc.array(append, { maxLength: 12 }), async (appends) => {
        const log = open()
        const plain = createMemoryLog<NoteEntry, NoteAnswer>()
        try {
          for (const { service, behind, entries, commands } of appends) {
            const after = Math.max(0, (await plain.head(service)) - behind)
            const answers = commands.map((command) => noteAnswer(command, after))
            const run = noteEntries(after + 1, after + entries)
            const expected = await plain.append(service, after, run, answers)
            expect(await log.append(service, after, run, answers)).toBe(expected)
          }
          expect(await log.services()).toEqual(await plain.services())
          expect(log.commits()).toBe(plain.commits())
          for (const service of [lunch, supper]) {
            expect(await log.read(service, 0)).toEqual(await plain.read(service, 0))
            for (const command of ['a', 'b', 'c', 'd', 'e', 'f']) {
              expect(await log.answerTo(service, command)).toEqual(
                await plain.answerTo(service, command),
              )
            }
          }
        } finally {
          await log.close()
        }
      }),
      { seed: 2, numRuns: 25 },
    )
  })
}
