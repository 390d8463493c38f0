import { nanoid } from 'nanoid'
import { useState } from 'react'
import styles from '#components/assembly/header.module.css'
import panels from '#components/assembly/panels.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { keep, readKept } from '#components/device/device-shelf.ts'
import { Connection } from '#components/live/connection.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'

const KEY = 'assembly'

/** Letters that nobody takes for one another; no figure, since that reads as a build. */
const SIGNS = 'ACDEFHJKLMNPRTUVWXY'

/** The device's own name, two signs of its id; null where it keeps none. */
const ownName = (): string | null => {
  // What it is proved for lies in a cookie that no script reads: this names it among its own.
  if (readKept('device') === null) keep('device', nanoid())
  const id = readKept('device')
  if (id === null) return null
  const sum = [...id].reduce((so, sign) => (so * 31 + sign.charCodeAt(0)) % SIGNS.length ** 2, 7)
  return `${SIGNS[Math.floor(sum / SIGNS.length)]}${SIGNS[sum % SIGNS.length]}`
}

/** Name of this screen among those at assembly, as it was chosen, else the device's own. */
export const useHere = (): readonly [string | null, (name: string) => void] => {
  const [here, setHere] = useState(() => readKept(KEY) ?? ownName())
  return [
    here,
    (name) => {
      keep(KEY, name)
      setHere(name)
    },
  ]
}

/** Where this screen stands; a tap changes it. */
export function HereSign({
  here,
  onChange,
}: {
  readonly here: string | null
  readonly onChange: () => void
}) {
  const words = useAssemblyWords()
  if (here === null) return null
  return (
    <button
      type="button"
      className={styles.here}
      aria-label={words.thisIs(here)}
      onClick={onChange}
    >
      {words.atScreen(here)}
    </button>
  )
}

/** Left, right, or the device's own name: chosen once, kept on the device. */
export function HerePanel({
  here,
  onChoose,
  onClose,
}: {
  readonly here: string | null
  readonly onChoose: (name: string) => void
  readonly onClose: () => void
}) {
  const words = useAssemblyWords()
  const own = ownName()
  return (
    <section className={panels.panel} aria-labelledby="here-title">
      <h1 id="here-title" className={panels.question}>
        {words.whichScreen}
      </h1>
      <p className={panels.then}>{words.whichScreenThen}</p>
      <div className={panels.middle}>
        <Choice
          legend={words.whichScreen}
          isBare
          ways={['left', ...(own === null ? [] : [own]), 'right'].map((id) => ({
            id,
            label: words.screen(id),
          }))}
          chosen={here}
          onChoose={onChoose}
        />
      </div>
      <div className={panels.link}>
        <Connection />
      </div>
      <Button size="large" className={panels.close} onClick={onClose}>
        {words.close}
      </Button>
    </section>
  )
}
