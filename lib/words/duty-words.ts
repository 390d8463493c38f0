/** What is said of a duty otherwise than of a pan; `at` is by when, as the station says its times. */
import type { SafetyReason } from '#lib/estimate/advice-reason.ts'

type Said<Text> = Readonly<Partial<Record<SafetyReason['what'], Text>>>

export interface DutyWords {
  readonly title: Said<(at: string) => string>
  readonly why: Said<(at: string) => string>
  /** Its title in one line of those that follow. */
  readonly short: Said<(at: string) => string>
  readonly button: Said<string>
}
