import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface CleanedProbeProps {
  readonly state: RunningState
  readonly form: ReadingForm
  /** What the probe was in, by component; none where it was only in the same food on the line. */
  readonly brings: readonly string[]
  readonly what: 'backup' | 'batch'
}

/** Before a probe goes into what is kept apart: whether it was cleaned is said, and never taken for said. */
export function CleanedProbe({ state, form: { entry, change }, brings, what }: CleanedProbeProps) {
  const words = useFoodWords()
  const names = brings.map(nameIn(state.station))
  const isNot = entry.cleaned === false
  const chosen = entry.cleaned === undefined ? null : isNot ? 'no' : 'yes'
  return (
    <>
      <Note kind={isNot ? 'no' : 'watch'}>
        <b>{words.round.keptApart(what)}.</b>{' '}
        {isNot ? words.round.ends(names, what) : words.round.wasIn(names)}
      </Note>
      <Choice
        legend={words.round.wasCleaned}
        ways={[
          { id: 'yes', label: words.round.cleaned },
          { id: 'no', label: words.round.notCleaned },
        ]}
        chosen={chosen}
        onChoose={(id) => change({ cleaned: id === 'yes' })}
      />
    </>
  )
}
