import styles from '#components/assembly/stop.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'

/** Why the build that shows is not made now, and who resolves it. */
export function HeldBand({ now }: { readonly now: NowBuild }) {
  const words = useAssemblyWords()
  return (
    <section className={styles.held} role="alert">
      {now.whyHeld ? (
        <>
          <strong>{words.heldWord}</strong>
          <div>
            <p>{words.sayWhyHeld(now.whyHeld)}</p>
            <p className={styles.resolves}>
              {now.whyHeld.reason === 'off-sale' ? words.heldNotServed : words.heldThen}
            </p>
          </div>
        </>
      ) : (
        <p>{words.notChecked(now.name)}</p>
      )}
    </section>
  )
}
