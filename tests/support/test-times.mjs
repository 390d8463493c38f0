/** How long each test took, out of the reports of the two runners; none where a report is missing. */
import { join } from 'node:path'
import { root } from '#server/clone.mjs'

/** Of vitest's JSON report: the file's absolute path, the whole title, seconds. */
export const unitTimes = (report) =>
  (report?.testResults ?? []).flatMap(({ name: file, assertionResults }) =>
    assertionResults.map(({ fullName: title, duration }) => ({
      file,
      title,
      seconds: (duration ?? 0) / 1000,
    })),
  )

const ofSuite = ({ specs = [], suites = [] }) => [
  ...specs.flatMap(({ file, title, tests }) => ({
    file: join(root, 'e2e', file),
    title,
    seconds:
      tests.flatMap(({ results }) => results).reduce((all, one) => all + one.duration, 0) / 1000,
  })),
  ...suites.flatMap(ofSuite),
]

/** Of Playwright's JSON report: the file's absolute path, the title, seconds of all tries. */
export const pageTimes = (report) => (report?.suites ?? []).flatMap(ofSuite)
