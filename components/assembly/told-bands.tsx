import { useState } from 'react'
import styles from '#components/assembly/assembly.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { Button } from '#components/ui/button.tsx'
import type { AssemblyView } from '#lib/rooms/making/views/assembly.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** What other screens did with this one's builds, and stops of theirs, which can be answered here. */
export function ToldBands({
  view,
  onAnswer,
}: {
  readonly view: AssemblyView
  readonly onAnswer: (name: string) => void
}) {
  const words = useAssemblyWords()
  const [seen, setSeen] = useState<readonly string[]>([])
  return (
    <>
      {view.stoppedElsewhere.map(({ name, screen }) => (
        <div key={name} className={styles.told} data-kind="stop" role="status">
          {words.stopElsewhere(name, screen)}
          <Button
            aria-label={`${words.answerHere}: ${sayBuild(name)}`}
            onClick={() => onAnswer(name)}
          >
            {words.answerHere}
          </Button>
        </div>
      ))}
      {view.takenAway
        .filter(({ name, screen }) => !seen.includes(`${name} ${screen}`))
        .map(({ name, screen }) => (
          <div key={name} className={styles.told} data-kind="taken" role="status">
            {words.takenAway(name, screen)}
            <Button
              aria-label={`${words.seen}: ${sayBuild(name)}`}
              onClick={() => setSeen([...seen, `${name} ${screen}`])}
            >
              {words.seen}
            </Button>
          </div>
        ))}
    </>
  )
}
