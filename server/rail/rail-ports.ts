import type { Logger } from 'pino'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { EventLog } from '#server/event-log/port.ts'
import type { Guests } from '#server/guests/port.ts'
import type { Larder } from '#server/larder/larder-rail.ts'
import type { ServerClock } from '#server/rail/clock.ts'
import type { LabelsGuard } from '#server/rail/labels-guard.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

/** What a rail works with. */
export interface RailPorts {
  readonly service: string
  readonly log: EventLog<Recorded, StoredAnswer>
  readonly guests: Guests
  readonly clock: ServerClock
  readonly station: Circumstances['station']
  /** Versions of the house's newest labels; null where they aren't known. */
  readonly newestLabels: () => LabelVersions | null
  readonly labelsGuard: LabelsGuard
  /** What is set aside between services; left away where nothing is kept of it. */
  readonly larder?: Pick<Larder, 'stream' | 'state' | 'newest'>
  /** How heavy earlier services of a station scooped. */
  readonly knownBias?: Circumstances['knownBias']
  readonly logger: Logger
  /** The store failed: what was appended is unknown, so the process ends. */
  readonly fatal: (error: unknown) => void
}
