import { useState } from 'react'
import styles from '#components/hand-over/lists.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'

type Wrong = 'again' | 'not-made'

/** Something is wrong with a build: made again, or not made yet; asked twice, since one throws food out. */
export function WrongPanel({
  name,
  isHandedOver,
  busy,
  onUnpay,
  onAgain,
  onNotMade,
  onNotSure,
  onBack,
}: {
  readonly name: string
  readonly isHandedOver: boolean
  readonly busy: boolean
  /** null where its ticket isn't paid, or it went out. */
  readonly onUnpay: (() => void) | null
  readonly onAgain: () => void
  readonly onNotMade: () => void
  /** null where nothing else stands on the shelf, or it went out. */
  readonly onNotSure: (() => void) | null
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  const [wrong, setWrong] = useState<Wrong | null>(null)
  const title =
    wrong === null
      ? words.whatIsWrong(name)
      : wrong === 'again'
        ? words.sure(name)
        : words.sureNotMade(name)
  return (
    <Panel
      title={title}
      label={title}
      back={isHandedOver ? words.leaveGone : words.no(name)}
      onBack={onBack}
    >
      <div className={styles.choices}>
        {wrong === null ? (
          <>
            <Button size="large" sub={words.againThen} onClick={() => setWrong('again')}>
              {words.again}
            </Button>
            {!isHandedOver && (
              <Button size="large" sub={words.notMadeThen} onClick={() => setWrong('not-made')}>
                {words.notMade}
              </Button>
            )}
            {onNotSure && (
              <Button size="large" sub={words.notSureThen} onClick={onNotSure}>
                {words.notSure}
              </Button>
            )}
            {onUnpay && (
              <Button size="large" disabled={busy} sub={words.unpayThen} onClick={onUnpay}>
                {words.unpay}
              </Button>
            )}
          </>
        ) : (
          <Button
            kind="no"
            size="large"
            disabled={busy}
            onClick={wrong === 'again' ? onAgain : onNotMade}
          >
            {wrong === 'again' ? words.yesAgain(name) : words.yesNotMade(name)}
          </Button>
        )}
      </div>
    </Panel>
  )
}
