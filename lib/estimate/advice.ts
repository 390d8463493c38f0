/**
 * What to tell the lead next: ranked, without repeats, calm. What comes in may change with every
 * event; what is told changes only for a reason.
 */

export type AdviceKind = 'safety' | 'sold-out' | 'start-batch' | 'keep' | 'measure'

/** Something worth telling, as the figures of this moment have it. */
export interface Candidate {
  /** What it is about: the same thing has the same key. */
  readonly key: string
  readonly kind: AdviceKind
  /** Cents that doing it now is expected to save. */
  readonly saves: number
}

export interface Told {
  readonly key: string
  readonly kind: AdviceKind
  /** When it was told, minutes of the day. */
  readonly at: number
  readonly saves: number
  readonly answer: 'open' | 'done' | 'put-off' | 'declined' | 'lapsed'
  readonly answeredAt: number | null
}

/** All that was told in a service, oldest first. Plain data. */
export type AdviceLog = readonly Told[]

const URGENT: ReadonlySet<AdviceKind> = new Set(['safety', 'sold-out'])

/** New suggestions in any hour. */
export const MOST_AN_HOUR = 6
/**
 * Six an hour among all components leave about so many minutes until one is spoken of again: what
 * isn't started now is planned as if it could only be started then. Found by simulation.
 */
export const NEXT_LOOK_MINUTES = 30
/** What a suggestion must save to be told, and to stay. */
const WORTH_TELLING = 40
/**
 * Each one that was told within the hour makes the next so many times dearer: cheap ones at the opening
 * would leave no room for a dear one later. Found by simulation.
 */
const DEARER = 1.5
const WORTH_KEEPING = 10
/** A suggestion that was put off comes back after so many minutes. */
export const PUT_OFF_MINUTES = 5
/** After done or declined the same isn't told for so many minutes, unless far more is at stake. */
const REST_MINUTES = 10
const FAR_MORE = 3
/**
 * What is about safety comes and goes in the log no more often than this, unless it is more urgent
 * than it was: a reading to and fro fills no log. Screens show it from the state, at once.
 */
const SAFETY_STAYS_MINUTES = 2
/** Another one takes the first place only where it saves so many times as much. */
const CLEARLY_MORE = 1.25

const isUrgent = ({ kind }: { readonly kind: AdviceKind }): boolean => URGENT.has(kind)

/** Suggestions that could still be told within any hour that ends now. */
export const roomFor = (log: AdviceLog, now: number): number =>
  Math.max(0, MOST_AN_HOUR - log.filter((one) => one.at > now - 60 && one.kind !== 'safety').length)

/** A clock that was set back holds nothing up. */
const isWithin = (since: number, minutes: number): boolean => since >= 0 && since < minutes

const rests = (log: AdviceLog, candidate: Candidate, now: number): boolean => {
  const before = log.findLast((one) => one.key === candidate.key)
  if (!before || before.answer === 'open') return false
  const since = now - (before.answeredAt ?? before.at)
  if (before.answer === 'put-off') return since < PUT_OFF_MINUTES
  if (candidate.kind === 'safety' && before.answer === 'lapsed')
    return candidate.saves <= before.saves && isWithin(since, SAFETY_STAYS_MINUTES)
  if (isUrgent(candidate)) return before.answer !== 'lapsed' && since < REST_MINUTES
  return since < REST_MINUTES && candidate.saves < FAR_MORE * Math.max(before.saves, WORTH_TELLING)
}

const byWorth = (one: Candidate, other: Candidate): number =>
  Number(other.kind === 'safety') - Number(one.kind === 'safety') ||
  Number(isUrgent(other)) - Number(isUrgent(one)) ||
  other.saves - one.saves

/**
 * The log after this moment: what lapsed is closed, what is worth telling is told. New ones are told
 * best first; in a rush none but what is urgent, and never more than six in any hour (what is about
 * safety is always told).
 */
export const tell = (
  log: AdviceLog,
  candidates: readonly Candidate[],
  now: number,
  isRush: boolean,
): AdviceLog => {
  const byKey = new Map(candidates.map((one) => [one.key, one]))
  const isLapsed = (one: Told): boolean => {
    const candidate = byKey.get(one.key)
    return (
      one.answer === 'open' &&
      !(one.kind === 'safety' && isWithin(now - one.at, SAFETY_STAYS_MINUTES)) &&
      (candidate === undefined || (!isUrgent(candidate) && candidate.saves < WORTH_KEEPING))
    )
  }
  const next: Told[] = log.some(isLapsed)
    ? log.map((one) => (isLapsed(one) ? { ...one, answer: 'lapsed', answeredAt: now } : one))
    : [...log]
  const open = new Set(next.filter((one) => one.answer === 'open').map((one) => one.key))
  let room = roomFor(next, now)
  for (const candidate of [...candidates].sort(byWorth)) {
    if (open.has(candidate.key) || rests(next, candidate, now)) continue
    const worth = WORTH_TELLING * DEARER ** (MOST_AN_HOUR - room)
    if (!isUrgent(candidate) && (isRush || candidate.saves < worth)) continue
    if (candidate.kind !== 'safety') {
      if (room === 0) continue
      room -= 1
    }
    next.push({
      key: candidate.key,
      kind: candidate.kind,
      at: now,
      saves: candidate.saves,
      answer: 'open',
      answeredAt: null,
    })
  }
  return next
}

/**
 * What is open, the one to do next first. The one that was first before stays so unless another is
 * urgent or saves clearly more.
 */
export const toDo = <One extends Candidate>(
  log: AdviceLog,
  candidates: readonly One[],
  firstBefore: string | null,
): readonly One[] => {
  const open = new Set(log.filter((one) => one.answer === 'open').map((one) => one.key))
  const ranked = candidates.filter((one) => open.has(one.key)).sort(byWorth)
  const [best] = ranked
  const held = ranked.find((one) => one.key === firstBefore)
  if (!best || !held || best === held || (isUrgent(best) && !isUrgent(held))) return ranked
  return best.saves >= CLEARLY_MORE * held.saves
    ? ranked
    : [held, ...ranked.filter((one) => one !== held)]
}
