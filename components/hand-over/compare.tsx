import styles from '#components/hand-over/panel.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { linesOfParts } from '#lib/service/mark.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** What the guest said, beside what the wrap says: the student compares. */
export function Compare({ build }: { readonly build: OnShelf }) {
  const words = useHandOverWords()
  const { alike } = build
  const only = alike ? words.markLines(alike.differs) : []
  return (
    <div className={styles.compare}>
      <h3>{words.compare}</h3>
      <div className={styles.asWritten}>
        <b>{sayBuild(build.name)}</b>
        {words.markLines(build.mark).map((line, at) => (
          <span
            key={line}
            data-need={at >= linesOfParts(build.mark)}
            data-differs={only.includes(line)}
          >
            {line}
          </span>
        ))}
      </div>
      {build.told.length > 0 && <p className={styles.told}>{words.told(build.told)}</p>}
      {alike && <p>{words.alikeBeware}</p>}
    </div>
  )
}
