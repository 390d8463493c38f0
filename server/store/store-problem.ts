import { storeProblemEn } from '#lib/words/house/start-up-en.ts'

/** Why a folder or file cannot be written. */
export type UnwritableReason =
  | 'is-a-file'
  | 'below-a-file'
  | 'is-a-folder'
  | 'no-permission'
  | 'read-only'
  | 'full'
  | 'other'

/** What each problem says about itself; paths are as the caller gave them. */
export interface StoreProblemValues {
  'in-use': { readonly path: string }
  damaged: { readonly path: string; readonly detail: string }
  /** `at` is the file or folder that stands in the way. */
  unwritable: {
    readonly path: string
    readonly at: string
    readonly reason: UnwritableReason
    readonly detail: string
  }
  'newer-file': { readonly path: string; readonly found: number; readonly known: number }
  'old-sqlite': { readonly found: string; readonly needed: string }
  'not-durable': { readonly path: string; readonly setting: string; readonly found: string }
}

export type StoreProblemCode = keyof StoreProblemValues

export type StoreFault<Code extends StoreProblemCode = StoreProblemCode> = {
  [C in Code]: { readonly code: C } & StoreProblemValues[C]
}[Code]

/** A store that cannot be opened or written. `fault` is the data; words are elsewhere. */
export class StoreProblem extends Error {
  override readonly name = 'StoreProblem'
  readonly fault: StoreFault

  constructor(fault: StoreFault, cause?: unknown) {
    super(`${fault.code}: ${JSON.stringify(fault)}`, cause === undefined ? undefined : { cause })
    this.fault = fault
  }

  get code(): StoreProblemCode {
    return this.fault.code
  }
}

type Sentences = { readonly [C in StoreProblemCode]: (fault: StoreProblemValues[C]) => string }

const tell = <Code extends StoreProblemCode>(sentences: Sentences, fault: StoreFault<Code>) =>
  sentences[fault.code](fault)

/** The sentence, in English, for whoever started the server. */
export const storeProblemSentence = (problem: StoreProblem): string =>
  tell(storeProblemEn, problem.fault)

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error)

const unwritableReason = (code: string): UnwritableReason | null => {
  if (code === 'ENOTDIR') return 'below-a-file'
  if (code === 'EISDIR' || code === 'SQLITE_CANTOPEN_ISDIR') return 'is-a-folder'
  if (code === 'EACCES' || code === 'EPERM' || code.startsWith('SQLITE_PERM')) {
    return 'no-permission'
  }
  if (code === 'EROFS' || code.startsWith('SQLITE_READONLY')) return 'read-only'
  if (code === 'ENOSPC' || code === 'EDQUOT' || code.startsWith('SQLITE_FULL')) return 'full'
  if (/^(SQLITE_(CANTOPEN|IOERR)|E[A-Z0-9]+$)/.test(code)) return 'other'
  return null
}

/**
 * Names what an error of the file system or of SQLite means for a store.
 * Null where it is neither, so that a fault of the program keeps its own face.
 */
export const storeProblemOf = (error: unknown, path: string, at = path): StoreProblem | null => {
  if (error instanceof StoreProblem) return error
  const code = codeOf(error)
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return new StoreProblem({ code: 'in-use', path }, error)
  }
  if (code.startsWith('SQLITE_NOTADB') || code.startsWith('SQLITE_CORRUPT')) {
    return new StoreProblem({ code: 'damaged', path, detail: messageOf(error) }, error)
  }
  const reason = unwritableReason(code)
  if (reason === null) return null
  return new StoreProblem(
    { code: 'unwritable', path, at, reason, detail: `${code}: ${messageOf(error)}` },
    error,
  )
}
