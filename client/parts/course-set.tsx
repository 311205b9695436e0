import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { threeFigures } from './figures.ts';
import { Keypad } from './keypad.tsx';

interface CourseSetProps {
  readonly courseDeg: number;
  readonly legCourseDeg: number;
  readonly onChange: (courseDeg: number) => void;
}

/** The course set on the OBS; it says so when that is not the course of the leg. */
export function CourseSet({ courseDeg, legCourseDeg, onChange }: CourseSetProps): JSX.Element {
  const [isTyping, setTyping] = useState(false);
  const isOther = Math.round(courseDeg) !== Math.round(legCourseDeg);
  return (
    <>
      <button
        type="button"
        class={isOther ? 'course-set other' : 'course-set'}
        onClick={() => {
          setTyping(true);
        }}
      >
        <span class="soft">{isOther ? 'OBS, not leg' : 'OBS'}</span>
        <span class="hidden">, course set:</span>
        <b>{threeFigures(courseDeg)}</b>
      </button>
      {isTyping ? (
        <Keypad
          title="Course set on the OBS"
          unit="degrees"
          low={0}
          high={360}
          hasDecimal={false}
          onSet={(value) => {
            onChange(value % 360);
            setTyping(false);
          }}
          onClose={() => {
            setTyping(false);
          }}
        />
      ) : null}
    </>
  );
}
