import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Initials, Proof } from '#components/job/use-proof.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import type { Acting } from '#components/live/acting.ts'
import { useSettled } from '#components/ui/settled.ts'
import type { Command } from '#lib/spine/registry.ts'

interface JobSpec {
  readonly acting: Acting
  /** What it is about: a tap that was meant for what stood there before isn't taken. */
  readonly about: unknown
  /** What is lacking, in the order in which it is asked for; null where that is there. */
  readonly lacks?: readonly (string | null)[]
  /** A reading that goes with it: it says itself what it lacks, and is remembered once it is sent. */
  readonly form?: ReadingForm | null
  /** Who signs for it, and the person in charge who decides it, where it asks for either. */
  readonly initials?: Initials | null
  readonly inCharge?: Proof | null
  /** null while it can't be sent; asked as it is sent, so that it carries the newest. */
  readonly command: () => Command | null
  /** Said once it is done. */
  readonly done: string | (() => string)
  readonly after: () => void
}

export interface Job {
  /** The first that is lacking, as the main button says it; null: it can be sent. */
  readonly lack: string | null
  readonly busy: boolean
  send(): void
}

/** One job: what it lacks, what is sent and with which proof, what is said of it, what comes then. */
export const useJob = (spec: JobSpec): Job => {
  const words = useFoodWords()
  const { acting, about, lacks = [], form = null, initials = null, inCharge = null } = spec
  const settled = useSettled(about)
  const ofReading =
    form === null || form.judged.isReady
      ? null
      : form.judged.question
        ? words.readings.lackAnswer
        : form.judged.lacks && words.readings.lack[form.judged.lacks]
  const lack =
    [
      ...lacks,
      ofReading,
      initials?.text.trim() === '' ? words.readings.lack.initials : null,
      inCharge?.text === '' ? words.givenOut.lackPassphrase : null,
    ].find((one) => one !== null) ?? null
  const act = async () => {
    if (lack !== null || acting.busy || !settled()) return
    const command = spec.command()
    if (command === null) return
    const done = typeof spec.done === 'string' ? spec.done : spec.done()
    const proof = inCharge ? { passphrase: inCharge.text } : undefined
    inCharge?.set('')
    if (!(await acting.act(command, done, proof))) return
    form?.remember()
    initials?.remember()
    spec.after()
  }
  return { lack, busy: acting.busy, send: () => void act() }
}
