import { describe, expect, it } from 'vitest'
import {
  type StoreFault,
  StoreProblem,
  storeProblemOf,
  storeProblemSentence,
} from '#server/store/store-problem.ts'

const faults: readonly StoreFault[] = [
  { code: 'in-use', path: 'data/log.db' },
  { code: 'damaged', path: 'data/log.db', detail: 'Page 7: btreeInitPage' },
  { code: 'unwritable', path: 'notes/data', at: 'notes', reason: 'below-a-file', detail: '' },
  { code: 'unwritable', path: 'data', at: 'data', reason: 'other', detail: 'EIO: i/o error' },
  { code: 'newer-file', path: 'data/log.db', found: 3, known: 1 },
  { code: 'old-sqlite', found: '3.51.2', needed: '3.51.3' },
  { code: 'not-durable', path: 'data/log.db', setting: 'synchronous', found: '1' },
]

describe('storeProblemSentence', () => {
  it.each(faults)('[L24] says every value of $code that a person can use', (fault) => {
    const sentence = storeProblemSentence(new StoreProblem(fault))
    const { code: _, ...values } = fault
    for (const [name, value] of Object.entries(values)) {
      const unsaid = name === 'reason' || (name === 'detail' && fault.code === 'unwritable')
      if (!unsaid) expect(sentence).toContain(String(value))
    }
    expect(sentence).toMatch(/^[^{}]+\.$/)
    expect(sentence).not.toMatch(/undefined|null/)
  })

  it('[L24] says what the computer said where the reason has no words of ours', () => {
    const problem = new StoreProblem({
      code: 'unwritable',
      path: 'data',
      at: 'data',
      reason: 'other',
      detail: 'EIO: i/o error',
    })
    expect(storeProblemSentence(problem)).toContain('EIO: i/o error')
  })
})

describe('storeProblemOf', () => {
  const coded = (code: string) => Object.assign(new Error('said so'), { code })

  it.each([
    ['SQLITE_BUSY', 'in-use'],
    ['SQLITE_BUSY_RECOVERY', 'in-use'],
    ['SQLITE_NOTADB', 'damaged'],
    ['SQLITE_CORRUPT_VTAB', 'damaged'],
    ['SQLITE_IOERR_FSYNC', 'unwritable'],
    ['SQLITE_FULL', 'unwritable'],
    ['EACCES', 'unwritable'],
    ['EROFS', 'unwritable'],
    ['EIO', 'unwritable'],
  ])('[L24] %s is %s', (code, expected) => {
    expect(storeProblemOf(coded(code), 'data/log.db')?.code).toBe(expected)
  })

  it('[L24] a fault of the program is no problem of a store', () => {
    expect(storeProblemOf(new TypeError('not a function'), 'data')).toBeNull()
    expect(storeProblemOf(coded('SQLITE_CONSTRAINT_CHECK'), 'data')).toBeNull()
    expect(storeProblemOf(coded('ERR_INVALID_ARG_TYPE'), 'data')).toBeNull()
  })
})
