import { Component, type ReactNode } from 'react';
import { Button } from './button.tsx';
import { SentenceError } from './states.tsx';

interface Props {
  /** What is inside, as the sentence names it: "This screen". */
  readonly what: string;
  readonly children: ReactNode;
}

/** A mistake in one view leaves the others standing, and says so instead of showing nothing. */
export class TroubleBoundary extends Component<Props, { readonly error: Error | null }> {
  override state: { readonly error: Error | null } = { error: null };

  static getDerivedStateFromError(error: unknown): { error: Error } {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <SentenceError
        message={`${this.props.what} stopped by a mistake in the app (${error.message}). What you saved is kept. Open it again; if it happens again, go on in another screen and report it.`}
        action={<Button onPress={() => this.setState({ error: null })}>Open it again</Button>}
      />
    );
  }
}
