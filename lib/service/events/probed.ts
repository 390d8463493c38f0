/**
 * Beside the fields of what a reading tells: what its probe brought into a protected back-up pan, or into a batch
 * that may go there. */
export interface Probed {
  /** Components that the probe was in before it, uncleaned since; with it the protection ends, of a batch that of the pan it goes into. */
  readonly brought?: readonly string[]
}
