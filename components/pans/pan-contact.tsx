import type { Acting } from '#components/live/acting.ts'
import styles from '#components/pans/panel.module.css'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { PanPicture } from '#lib/views/pans.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

interface PanContactProps {
  readonly state: RunningState
  readonly picture: PanPicture
  readonly acting: Acting
  readonly onScoop: () => void
}

/** What touched the pan, and whether a protected one stands behind it. */
export function PanContact({ state, picture, acting, onScoop }: PanContactProps) {
  const { backup, component } = picture
  const isReady = backup !== null && backup.readySince !== null
  const setReady = (ready: boolean) => {
    if (acting.busy || ready === isReady) return
    const done = words.done.backup(nameIn(state.station)(component), ready)
    void acting.act({ type: 'setBackup', component, ready }, done)
  }
  return (
    <div className={styles.contact}>
      <button type="button" onClick={onScoop}>
        {words.otherScoop}
      </button>
      {backup && (
        <fieldset>
          <legend>
            <b>{words.backup}</b> {words.backupWhat}
          </legend>
          {[true, false].map((ready) => (
            <button
              key={String(ready)}
              type="button"
              aria-pressed={ready === isReady}
              disabled={acting.busy}
              onClick={() => setReady(ready)}
            >
              {words.backupIs(ready)}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  )
}

/** Which pan comes in the place of the one that goes away. */
export function WasBackup({
  was,
  busy,
  onChange,
}: {
  readonly was: boolean
  readonly busy: boolean
  readonly onChange: (was: boolean) => void
}) {
  return (
    <fieldset className={styles.wasBackup}>
      <legend>{words.wasBackup}</legend>
      {[true, false].map((one) => (
        <button
          key={String(one)}
          type="button"
          aria-pressed={one === was}
          disabled={busy}
          onClick={() => onChange(one)}
        >
          {words.wasBackupIs(one)}
        </button>
      ))}
    </fieldset>
  )
}
