/** Beside the fields of what a reading tells: what its probe brought into a protected back-up pan. */
export interface Probed {
  /** Components that the probe was in before it, uncleaned since; with it the protection ends. */
  readonly brought?: readonly string[]
}
