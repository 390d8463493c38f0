import type { TakeProblem } from '#lib/larder/take.ts'
import type { AmountProblem, PlaceProblem } from '#lib/measure/pan-rules.ts'
import type { TopUpProblem } from '#lib/needs/top-up.ts'
import type { NotReady } from '#lib/prep/prep-plan.ts'
import type { End, EndWhy, Paragraph } from '#lib/safety/ends.ts'
import type { BatchTimesProblem, LoadProblem } from '#lib/safety/load.ts'
import type { MomentProblem, ReadingLack, ReadingQuestion } from '#lib/safety/readings.ts'
import type { ReheatProblem } from '#lib/safety/reheating.ts'
import type { Temperature } from '#lib/safety/temperature.ts'
import type { ClockProblem } from '#lib/safety/time-control.ts'
import type { DateProblem } from '#lib/safety/told-dates.ts'
import type { AcceptedFinding, HoldReason } from '#lib/service/events/event.ts'
import type { PlaceKind } from '#lib/service/events/food-event.ts'
import type { PlanRefusal } from '#lib/service/events/plan-refusal.ts'
import type { Role } from '#lib/service/roles.ts'
import type { BuildState } from '#lib/service/state.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import type { LabelProblem } from '#lib/station/label-problem.ts'

/** Why a build can't be filled: what it takes isn't there for it, or isn't sold. */
export type NotLeft =
  | { readonly code: 'sold-out'; readonly component: string }
  | { readonly code: 'off-sale'; readonly component: string }
  /** A jump of the clock leaves it open how old it is; what is read again, or else nothing but confirming, helps. */
  | {
      readonly code: 'clock-unsure'
      readonly component: string
      readonly helps: 'read' | 'confirm'
    }
  | { readonly code: 'past-throw-out-by-then'; readonly component: string; readonly at: number }
  | { readonly code: 'kept'; readonly component: string; readonly for: readonly string[] }
  | { readonly code: 'not-selling'; readonly what: 'component' | 'item'; readonly id: string }

/** Something that a build of an order lacks, by the letter that it has or would have had. */
export type Lack = { readonly letter: string } & NotLeft

/** What a command may name that there isn't. */
export type Unknown =
  | 'station'
  | 'item'
  | 'component'
  | 'ingredient'
  | 'pan'
  /** A back-up pan, by its own id. */
  | 'backup'
  /** By its component, which has none, or none that stands ready. */
  | 'protected-backup'
  | 'batch'
  | 'tool'
  | 'ticket'
  | 'build'
  /** Nothing that the station's labels can speak of. */
  | 'need'
  /** Nothing that can be ordered is called so. */
  | 'order'
  | 'caution'
  | 'advice'
  | 'bells'
  | 'task'

/** Why a command was refused: a code and what its sentence needs. Words are in lib/words. */
export type Refusal =
  | NotLeft
  /** Two or more: one by itself is told by its own code. */
  | { readonly code: 'lacks'; readonly lacks: readonly Lack[] }
  | { readonly code: 'service-not-open' }
  | { readonly code: 'service-already-open' }
  | { readonly code: 'service-closed' }
  | { readonly code: 'unknown'; readonly what: Unknown; readonly id: string }
  | { readonly code: 'not-of-this-item'; readonly item: string; readonly component: string }
  | { readonly code: 'base-missing'; readonly item: string }
  | { readonly code: 'no-cups'; readonly component: string }
  | { readonly code: 'cannot-leave-out'; readonly item: string; readonly component: string }
  | { readonly code: 'nothing-in-it' }
  | { readonly code: 'too-many-builds'; readonly most: number }
  | { readonly code: 'absurd-portions'; readonly component: string; readonly most: number }
  | { readonly code: 'absurd-amount'; readonly pan: string; readonly most: number }
  | { readonly code: 'not-asked' }
  | { readonly code: 'not-sure' }
  | { readonly code: 'need-dropped'; readonly build: string; readonly need: NeedCode }
  | { readonly code: 'contains'; readonly component: string; readonly need: NeedCode }
  | { readonly code: 'may-contain'; readonly component: string; readonly need: NeedCode }
  | { readonly code: 'not-listed'; readonly component: string; readonly need: NeedCode }
  | { readonly code: 'unknown-declaration'; readonly component: string; readonly need: NeedCode }
  | { readonly code: 'contact-not-known'; readonly component: string; readonly need: NeedCode }
  | {
      readonly code: 'shared-contact'
      readonly component: string
      readonly need: NeedCode
      readonly touches: string
    }
  | ({ readonly code: 'caution' } & AcceptedFinding)
  | { readonly code: 'nothing-to-accept' }
  | { readonly code: 'no-one-in-charge' }
  | { readonly code: 'not-in-charge' }
  | { readonly code: 'not-lead' }
  | {
      readonly code: 'label-contradicts'
      readonly ingredient: string
      /** Left away where a declaration and a trait contradict each other. */
      readonly problem?: LabelProblem
    }
  | { readonly code: 'needs-not-checked'; readonly why: 'stale' | 'failed' }
  | { readonly code: 'not-read-back' }
  | { readonly code: 'said-changed'; readonly letter: string }
  | { readonly code: 'not-agreed'; readonly letter: string }
  /** It should have been held: nobody asked may start it, finish it or give it out. */
  | { readonly code: 'fits-no-more'; readonly build: string }
  | { readonly code: 'build-held'; readonly build: string; readonly reason: HoldReason }
  | { readonly code: 'pan-soiled'; readonly pan: string }
  | { readonly code: 'made-food-is-waste'; readonly build: string }
  | {
      readonly code: 'thrown-out-whole'
      readonly build: string
      readonly because: 'made' | 'wrong-scoop'
    }
  | { readonly code: 'not-in-build'; readonly build: string; readonly component: string }
  | { readonly code: 'food-in-it-unclear'; readonly build: string }
  | { readonly code: 'cup-stays-out'; readonly build: string; readonly component: string }
  | { readonly code: 'mixed-up-with-nothing' }
  | { readonly code: 'wrong-state'; readonly build: string; readonly state: BuildState }
  /** `screen` is the name of the assembly screen that makes it; null where none was said. */
  | { readonly code: 'made-elsewhere'; readonly build: string; readonly screen: string | null }
  | { readonly code: 'build-stopped'; readonly build: string }
  | { readonly code: 'nothing-to-acknowledge'; readonly build: string }
  | { readonly code: 'changed-since'; readonly build: string }
  | { readonly code: 'handling-not-read'; readonly build: string }
  | { readonly code: 'short'; readonly build: string; readonly component: string }
  | { readonly code: 'pan-not-empty'; readonly pan: string }
  | { readonly code: 'say-what-was-put-in'; readonly pan: string }
  | { readonly code: 'already-so' }
  | PlanRefusal
  | ({ readonly code: 'prep-not-ready' } & NotReady)
  | { readonly code: 'reading-no-tick'; readonly task: string }
  /** Food is there of what the newest document doesn't have, or counts otherwise. */
  | { readonly code: 'food-of-before'; readonly component: string }
  | { readonly code: 'reading-unclear'; readonly pan: string }
  | { readonly code: 'no-tare'; readonly pan: string }
  | { readonly code: 'not-by-weight'; readonly pan: string }
  | { readonly code: 'no-scoop'; readonly component: string }
  | {
      readonly code: 'scoop-carries'
      readonly tool: string
      /** Whose scoop is missing. */
      readonly component: string
      readonly need: NeedCode
      /** Components: what it would carry out of, and into: the one whose scoop is missing, or where it goes back to. */
      readonly from: string
      readonly into: string
    }
  | { readonly code: 'too-many-measures'; readonly most: number }
  | { readonly code: 'no-scoop-fits'; readonly component: string }
  /** Whole percent; below 0 it is light. */
  | { readonly code: 'scoop-far-off'; readonly component: string; readonly percent: number }
  | { readonly code: 'not-short'; readonly build: string }
  | { readonly code: 'other-component'; readonly component: string; readonly batch: string }
  | { readonly code: 'no-batch'; readonly component: string }
  /** Food of no batch: nobody said that it is straight from the pack, or when that was opened. */
  | {
      readonly code: 'not-said-bought'
      readonly component: string
      readonly lacks: 'bought' | 'opened-on'
    }
  | { readonly code: 'older-batch-first'; readonly batch: string }
  | { readonly code: 'more-than-batch'; readonly batch: string; readonly most: number }
  /** The station's document doesn't ask for it to be read. */
  | { readonly code: 'not-read-here' }
  | { readonly code: 'nothing-there'; readonly id: string }
  | { readonly code: 'not-initialled' }
  | { readonly code: 'reading-lacks'; readonly lack: ReadingLack }
  | {
      readonly code: 'reading-asked'
      readonly question: ReadingQuestion
      readonly read: Temperature
    }
  | { readonly code: 'wrong-moment'; readonly problem: MomentProblem | BatchTimesProblem }
  | { readonly code: 'wrong-date'; readonly problem: DateProblem }
  | { readonly code: 'wrong-amount'; readonly pan: string; readonly problem: AmountProblem }
  | { readonly code: 'wrong-place'; readonly pan: string; readonly problem: PlaceProblem }
  | { readonly code: 'cannot-load'; readonly component: string; readonly problem: LoadProblem }
  | { readonly code: 'cannot-take-lot'; readonly lot: string; readonly problem: TakeProblem }
  | { readonly code: 'stood-open'; readonly component: string }
  | { readonly code: 'cannot-top-up'; readonly pan: string; readonly why: TopUpProblem }
  | { readonly code: 'cannot-start-clock'; readonly why: ClockProblem }
  | {
      readonly code: 'cannot-cool'
      readonly batch: string
      readonly stage: 1 | 2
      readonly why: 'nobody-there' | 'too-soon'
      /** By when that stage has to be read; answers of before don't say. */
      readonly by?: number
    }
  | { readonly code: 'cannot-reheat'; readonly why: ReheatProblem }
  | { readonly code: 'way-not-allowed'; readonly ways: readonly string[] }
  | { readonly code: 'past-throw-out'; readonly id: string }
  | { readonly code: 'throw-out-first'; readonly count: number }
  | { readonly code: 'handed-over-first'; readonly count: number }
  | { readonly code: 'more-handed-over'; readonly builds: readonly string[] }
  | { readonly code: 'still-cooling'; readonly batch: string }
  /** What happened to the food at a place doesn't allow that end. */
  | {
      readonly code: 'end-not-offered'
      readonly id: string
      readonly end: End
      readonly why: EndWhy
      readonly paragraph: Paragraph
    }
  | { readonly code: 'end-asks-reading'; readonly id: string; readonly end: End }
  /** Of so many places nobody said what their food comes to; the first in line order, by its component. */
  | {
      readonly code: 'food-unanswered'
      readonly count: number
      readonly what: PlaceKind
      readonly id: string
      readonly component: string
    }
  | { readonly code: 'builds-open'; readonly count: number }
  | { readonly code: 'guests-to-find'; readonly count: number }
  | { readonly code: 'id-used-for-something-else' }
  | { readonly code: 'could-not-decide' }

export type RefusalCode = Refusal['code']

/** Why a command was not taken: nothing is stored, and it may be sent again. */
export type NotTaken =
  | { readonly code: 'not-the-protocol' }
  | { readonly code: 'too-large' }
  | { readonly code: 'newer-version' }
  | { readonly code: 'older-version' }
  | { readonly code: 'role-may-not'; readonly role: Role; readonly command: string }
  | { readonly code: 'wrong-passphrase' }
  | { readonly code: 'no-passphrase' }
  | { readonly code: 'too-many-tries' }
  /** It walks through the demo: this is for devices that were proved. */
  | { readonly code: 'not-proved' }
  /** Of a service that this device isn't joined for now: it waits until it is again. */
  | { readonly code: 'not-joined' }
  | { readonly code: 'no-such-service' }
  | { readonly code: 'busy' }
  | { readonly code: 'closing' }

export type NotTakenCode = NotTaken['code']
