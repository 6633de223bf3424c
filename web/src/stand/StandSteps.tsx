import type { ReactNode } from 'react';
import { BackdropStep } from './BackdropStep.tsx';
import { CameraStep } from './CameraStep.tsx';
import { PlaceStep } from './PlaceStep.tsx';
import { ScaleStep } from './ScaleStep.tsx';
import styles from './StandSteps.module.css';
import { SET_UP_STEPS, type SetUpStep, STEP_NAMES } from './set-up-steps.ts';
import type { StandDraft } from './stand-draft.ts';

/** What every step of the set-up is given. */
export interface StepProps {
  readonly draft: StandDraft;
  readonly fields: Readonly<Record<string, string>>;
  readonly onChange: (draft: StandDraft) => void;
}

type StandStepsProps = {
  title: string;
  step: SetUpStep;
  /** Steps that can be gone to from here. */
  openSteps: readonly SetUpStep[];
  onStep: (step: SetUpStep) => void;
} & (
  | (StepProps & { onSubmit: () => void; foot: ReactNode; children?: never })
  | { children: ReactNode; draft?: never }
);

/** The frame of the set-up: where one is in the five steps, the step itself, and the ways on. */
export function StandSteps(props: StandStepsProps) {
  const { title, step, openSteps, onStep } = props;
  const at = SET_UP_STEPS.indexOf(step);
  return (
    <div className={styles.screen}>
      <h1>{title}</h1>
      <nav aria-label="Steps">
        <ol className={styles.steps}>
          {SET_UP_STEPS.map((one, index) => (
            <li key={one}>
              <button
                type="button"
                aria-current={one === step ? 'step' : undefined}
                data-past={index < at || undefined}
                disabled={!openSteps.includes(one)}
                onClick={() => onStep(one)}
              >
                <span className={styles.number}>{index + 1}</span>
                <span className={styles.stepName}>{STEP_NAMES[one]}</span>
              </button>
            </li>
          ))}
        </ol>
      </nav>
      <section className={styles.step} aria-labelledby="step-name">
        <div>
          <p className={styles.count}>
            Step {at + 1} of {SET_UP_STEPS.length}
          </p>
          <h2 id="step-name">{STEP_NAMES[step]}</h2>
        </div>
        {props.draft === undefined ? (
          props.children
        ) : (
          <form
            className={styles.form}
            noValidate
            onSubmit={(event) => {
              event.preventDefault();
              props.onSubmit();
            }}
          >
            <StepEntries step={step} draft={props.draft} fields={props.fields} onChange={props.onChange} />
            <div className={styles.foot}>{props.foot}</div>
          </form>
        )}
      </section>
    </div>
  );
}

function StepEntries({ step, draft, fields, onChange }: StepProps & { step: SetUpStep }) {
  const entries = { draft, fields, onChange };
  switch (step) {
    case 'camera':
      return <CameraStep {...entries} />;
    case 'backdrop':
      return <BackdropStep {...entries} />;
    case 'place':
      return <PlaceStep {...entries} />;
    case 'scale':
      return <ScaleStep {...entries} />;
    case 'empty':
      return null;
  }
}
