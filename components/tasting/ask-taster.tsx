import { useState } from 'react'
import styles from '#components/tasting/tasting.module.css'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { askTiles } from '#lib/rooms/orders/views/ask-tiles.ts'
import { type NeedCode, usualHandling } from '#lib/station/codes/codes.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { TasterTold } from '#lib/tasting/tasting.ts'

type Needs = TasterTold['needs']

/** Keep apart, or a diet as it is eaten; then the other way; then nothing. */
const tapped = (needs: Needs, code: NeedCode): Needs => {
  const before = needs.find((one) => one.code === code)
  const others = needs.filter((one) => one.code !== code)
  const usual = usualHandling(code)
  if (!before) return [...needs, { code, handling: usual }]
  if (before.handling !== usual) return others
  const other = usual === 'keep-apart' ? 'leave-out' : 'keep-apart'
  return needs.map((one) => (one.code === code ? { code, handling: other } : one))
}

/** A taster is asked as a guest is: silence is no answer. */
export function AskTaster({
  station,
  taster,
  before,
  busy,
  onTold,
  onBack,
}: {
  readonly station: StationDocument
  readonly taster: number
  readonly before: TasterTold | undefined
  readonly busy: boolean
  readonly onTold: (told: TasterTold) => void
  readonly onBack: () => void
}) {
  const words = useTastingWords()
  const [needs, setNeeds] = useState<Needs>(before?.needs ?? [])
  const { tiles, more } = askTiles(station)
  return (
    <section className={styles.asking} aria-label={words.askTitle(taster)}>
      <header>
        <h2>
          {words.askTitle(taster)}: {words.question}
        </h2>
        <Button kind="quiet" onClick={onBack}>
          {words.back}
        </Button>
      </header>
      <div className={styles.tiles}>
        {[...tiles, ...more].map((code) => {
          const need = needs.find((one) => one.code === code)
          return (
            <button
              key={code}
              type="button"
              aria-pressed={need !== undefined}
              data-handling={need?.handling}
              onClick={() => setNeeds(tapped(needs, code))}
            >
              <b>{words.tile(code)}</b>
              {need && <span>{words.handling(need.handling)}</span>}
            </button>
          )
        })}
      </div>
      <div className={styles.acts}>
        <Button
          disabled={busy || needs.length > 0}
          onClick={() => onTold({ asked: 'none', needs: [] })}
        >
          {words.saidNone}
        </Button>
        <Button
          disabled={busy}
          sub={words.notSureHint}
          onClick={() => onTold({ asked: 'not-sure', needs: [] })}
        >
          {words.saidNotSure}
        </Button>
        <Button
          kind="main"
          disabled={busy}
          lacks={needs.length === 0 ? words.tapFirst : null}
          onClick={() => onTold({ asked: 'needs', needs })}
        >
          {words.saidThese(needs.length)}
        </Button>
      </div>
    </section>
  )
}
