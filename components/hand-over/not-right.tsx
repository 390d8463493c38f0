import { MixedUpPanel } from '#components/hand-over/mixed-up-panel.tsx'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { WrongPanel } from '#components/hand-over/wrong-panel.tsx'
import type { Acting } from '#components/live/acting.ts'
import type { HandedOver, OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import type { MixedUpView } from '#lib/rooms/shelf/views/mixed-up.ts'

/** A build that isn't right, or can't be told from others: what is done about it. */
export function NotRight({
  wrong,
  onShelf,
  mixedUp,
  isAlone,
  acting: { busy, act },
  once,
  onUnpay,
  onNotSure,
  onBack,
}: {
  readonly wrong: HandedOver | OnShelf
  /** The same, while it stands on the shelf. */
  readonly onShelf: OnShelf | undefined
  /** null until somebody isn't sure which is which. */
  readonly mixedUp: MixedUpView | null
  /** Nothing else stands made that it could be mixed up with. */
  readonly isAlone: boolean
  readonly acting: Pick<Acting, 'busy' | 'act'>
  /** Guards an act against a second tap. */
  readonly once: (act: () => void) => () => void
  readonly onUnpay: (build: OnShelf) => void
  readonly onNotSure: (name: string) => void
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  const { ticket, letter, name } = wrong
  if (mixedUp)
    return (
      <MixedUpPanel
        picked={name}
        view={mixedUp}
        busy={busy}
        onBack={onBack}
        onThrowOut={(lit) =>
          once(() => {
            onBack()
            const builds = lit.map((one) => ({ ticket: one.ticket, letter: one.letter }))
            void act({ type: 'remakeMixedUp', builds }, words.areOut(lit.map((one) => one.name)))
          })()
        }
      />
    )
  return (
    <WrongPanel
      name={name}
      isHandedOver={onShelf === undefined}
      busy={busy}
      onBack={onBack}
      onUnpay={
        onShelf?.paid
          ? () => {
              onBack()
              onUnpay(onShelf)
            }
          : null
      }
      onNotSure={onShelf && !isAlone ? () => onNotSure(name) : null}
      onAgain={() => {
        onBack()
        void act({ type: 'remake', ticket, letter }, words.isAgain(name))
      }}
      onNotMade={() => {
        onBack()
        void act({ type: 'takeBack', ticket, letter, made: false }, words.isBack(name))
      }}
    />
  )
}
