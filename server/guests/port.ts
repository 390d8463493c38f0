/**
 * What is said of people, apart from the log and in no backup: names, reasons and free text of guests
 * until the close, initials as long as the stream that they belong to. Keyed by the id of the command
 * that brought it; knows nothing of what it means.
 */
import type { ApartKind, SetApart } from '#lib/access/apart.ts'

/** How many there are of a kind in a service. */
export interface ApartCount {
  readonly service: string
  readonly kind: ApartKind
  readonly count: number
}

export interface Guests {
  /**
   * Keeps what a command said of people, durable when the promise settles; call it before the append
   * that needs it. The first of a kind stays: a command sent again changes nothing.
   */
  put(service: string, command: string, said: readonly SetApart[]): Promise<void>
  /** What is kept of a kind, by command id. */
  of(service: string, kind: ApartKind): Promise<Readonly<Record<string, string>>>
  /** Services of which something is kept, in order of their ids. */
  services(): Promise<readonly string[]>
  counts(): Promise<readonly ApartCount[]>
  /**
   * Deletes what was brought by a command that is not in `keep`, and returns of how many rows. Only
   * while nothing is under way: what was put ahead of its append would go too.
   */
  sweep(service: string, keep: ReadonlySet<string>): Promise<number>
  /**
   * Deletes those kinds of a service, and their bytes from the store's files; of these commands only,
   * where some are named. Returns how many rows there were.
   */
  forget(
    service: string,
    kinds: readonly ApartKind[],
    commands?: readonly string[],
  ): Promise<number>
  close(): Promise<void>
}
