/**
 * Names, initials and free text, apart from the log: in no backup, deleted at close-out.
 * Keyed by the id of the command that brought them; knows nothing of what it means.
 */
export interface Guests {
  /**
   * Keeps a name, durable when the promise settles; call it before the append that needs it.
   * The first name of a command stays: a command sent again changes nothing.
   */
  put(service: string, command: string, name: string): Promise<void>
  /** Names by command id. */
  namesOf(service: string): Promise<Readonly<Record<string, string>>>
  /** Services that have names, in order of their ids. */
  services(): Promise<readonly string[]>
  /**
   * Deletes the names whose command is not in `keep`, and returns how many. Only while nothing is
   * under way: a name put ahead of its append would go too.
   */
  sweep(service: string, keep: ReadonlySet<string>): Promise<number>
  /** Deletes all names of a service, and their bytes from the store's files. */
  forget(service: string): Promise<void>
  close(): Promise<void>
}
