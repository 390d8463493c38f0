/** Which acceptance of the person in charge belongs to a build that is being ordered. */
import { isCovered } from '#lib/needs/covered.ts'
import type { Finding } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { foodKey } from '#lib/service/events/food-key.ts'
import type { Acceptance, ServiceState } from '#lib/service/state.ts'

const isFor = (
  acceptance: Acceptance,
  choice: BuildChoice,
  findings: readonly Finding[],
): boolean =>
  acceptance.build === null &&
  acceptance.food === foodKey(choice) &&
  choice.needs.every(({ code, handling }) =>
    acceptance.needs.some((one) => one.code === code && one.handling === handling),
  ) &&
  findings.every((finding) => acceptance.findings.some((one) => isCovered(finding, one)))

/**
 * Number of the newest acceptance that no build has used and that covers these findings.
 * @param before numbers that were there before it was asked for: another guest's
 */
export const acceptedSince = (
  cautions: ServiceState['cautions'],
  before: ReadonlySet<number>,
  choice: BuildChoice,
  findings: readonly Finding[],
): number | null => {
  const numbers = Object.entries(cautions)
    .filter(([, one]) => isFor(one, choice, findings))
    .map(([key]) => Number(key.slice(1)))
    .filter((number) => !before.has(number))
  return numbers.length === 0 ? null : Math.max(...numbers)
}

export const cautionNumbers = (cautions: ServiceState['cautions']): ReadonlySet<number> =>
  new Set(Object.keys(cautions).map((key) => Number(key.slice(1))))
