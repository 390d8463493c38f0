/** What is said of a source on its button: what it is, what is left of it, why it can't go in. */
import type { FoodWords } from '#components/job/use-food-words.ts'
import { sayLastUse } from '#components/pans/pan-facts.ts'
import type { PutSource } from '#lib/rooms/pans/views/put-sources.ts'
import type { RunningState } from '#lib/service/state.ts'

export const sourceSaid = (
  words: FoodWords,
  state: RunningState,
  component: string,
  source: PutSource,
): { readonly name: string; readonly more: string; readonly off: boolean } => {
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const each = state.portions[component]?.amount ?? 1
  const count = (amount: number) => Math.floor(amount / each)
  const lastUse = ({ useBy: ends }: Exclude<PutSource, { kind: 'plain' }>) =>
    sayLastUse(words, state, { useBy: ends, throwOutAt: null })
  if (source.kind === 'plain')
    return {
      name: words.forms.fromPack,
      more: source.heldBy === 'dry' ? words.forms.fromPackDryWhy : words.forms.fromPackWhy,
      off: false,
    }
  if (source.kind === 'backup')
    return {
      name: words.forms.backupPan(source.kept, source.guarded),
      more: [words.forms.backupLeft(count(source.amount)), ...lastUse(source)].join(', '),
      off: false,
    }
  return {
    name: words.forms.batchMade(time(source.finishedAt)),
    more: source.problem
      ? words.safety.load(source.problem, time)
      : [
          words.forms.portions(count(source.amount)),
          ...(source.isFirst ? [words.forms.firstOut] : []),
          ...lastUse(source),
        ].join(', '),
    off: source.problem !== null,
  }
}
