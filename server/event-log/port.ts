/**
 * The log of a service: where its events and answers are kept. Ready for several servers:
 * an append names the position it was decided on, and learns of a conflict instead of waiting.
 * Knows nothing of what an event means.
 */

/** One event as it lies in the log. Its own fields stand beside these. */
export interface LogEntry {
  /** 1, 2, 3 ... within its service. */
  readonly position: number
  /** Epoch milliseconds, stamped by the server; never runs backwards within a service. */
  readonly at: number
  /** Id of the command that caused it; null for what fell due. */
  readonly command: string | null
  readonly type: string
}

export interface LoggedAnswer<Answer> {
  readonly command: string
  /** Fingerprint of the command's content without names and passphrases. */
  readonly fingerprint: string
  readonly answer: Answer
}

/**
 * What has to be true over several services as something is appended: a version is kept of each key,
 * 0 where it was never raised.
 */
export interface Guard {
  /** Such as `open:STATION`. */
  readonly key: string
  /** The version at which it was decided. */
  readonly expected: number
}

/** What an append writes of one service, or of another stream of the house. */
export interface StreamAppend<Entry, Answer> {
  readonly service: string
  readonly after: number
  readonly entries: readonly Entry[]
  readonly answers: readonly LoggedAnswer<Answer>[]
}

/**
 * `conflict`: a service is not at the expected position, one of the command ids is already stored,
 * or a guard is at another version. Nothing of the append was written.
 */
export type Appended = 'committed' | 'conflict'

export interface EventLog<Entry extends LogEntry, Answer> {
  /**
   * Appends all or nothing, durable when the promise settles. The entries' positions must be
   * `after + 1` onwards. Answers may come without entries (a refusal). Each guard is compared and
   * raised by one in the same transaction; one key given again is expected one higher each time.
   * @throws on any error of the store; the caller ends the process, nothing is retried.
   */
  append(
    service: string,
    after: number,
    entries: readonly Entry[],
    answers: readonly LoggedAnswer<Answer>[],
    guards?: readonly Guard[],
  ): Promise<Appended>
  /**
   * As `append`, of several services at once, each named once: all of it is committed, or nothing. Only
   * the first's entries are of the log's own kind; another's are whatever its reader takes them for.
   * @throws {RangeError} where a service is named twice or none is; else as `append`
   */
  appendAll(
    appends: readonly [StreamAppend<Entry, Answer>, ...StreamAppend<LogEntry, unknown>[]],
    guards?: readonly Guard[],
  ): Promise<Appended>
  /** The version of a key, as it is in the store. */
  guard(key: string): Promise<number>
  /** Keys that were ever raised. */
  guards(): Promise<readonly string[]>
  /** Entries with a position greater than `after`, in order, at most `limit` if given. */
  read(service: string, after: number, limit?: number): Promise<readonly Entry[]>
  answerTo(service: string, command: string): Promise<LoggedAnswer<Answer> | null>
  /** Its streams of other entries and answers: who reads one knows what was appended to it. */
  as<Other extends LogEntry, OtherAnswer>(): EventLog<Other, OtherAnswer>
  /** Position of the newest entry; 0 where there is none. */
  head(service: string): Promise<number>
  /** Services that have entries, oldest first. */
  services(): Promise<readonly string[]>
  /**
   * Takes services with their entries and answers out of the log, and their bytes out of the store's
   * files; durable when the promise settles. Nothing may append to them meanwhile. Takes as long as
   * writing the whole log anew.
   * @throws on any error of the store, as an append does
   */
  erase(services: readonly string[]): Promise<void>
  /** Called after each committed append that has entries, own and foreign alike. Returns how to stop. */
  onAdvance(listener: (service: string, position: number) => void): () => void
  /** Appends committed since this log was opened. */
  commits(): number
  close(): Promise<void>
}
