import { Component, type ReactNode } from 'react';
import buttons from './buttons.module.css';
import styles from './Fault.module.css';
import { Icon } from './Icon.tsx';

/** Catches a part of the app that did not load or broke off, and offers the page anew. */
export class Catcher extends Component<{ children: ReactNode }, { broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError() {
    return { broken: true };
  }

  override render() {
    if (!this.state.broken) return this.props.children;
    return (
      <div role="alert" className={styles.fault}>
        <p>
          This page did not load whole. What you have sent is safe. See that the server is running, then load
          the page anew.
        </p>
        <button type="button" className={buttons.quiet} onClick={() => window.location.reload()}>
          <Icon name="again" /> Load the page anew
        </button>
      </div>
    );
  }
}
