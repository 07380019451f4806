import { Component } from 'react';
import type { ReactNode } from 'react';

interface PanelProps {
  readonly name: string;
  readonly children: ReactNode;
}

/** A part of the page that fails alone: the rest goes on, and the user can try again. React asks for a class here. */
export class Panel extends Component<PanelProps, { readonly failure: string | null }> {
  override state: { readonly failure: string | null } = { failure: null };

  static getDerivedStateFromError(error: unknown): { failure: string } {
    return { failure: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { failure } = this.state;
    if (failure === null) return this.props.children;
    return (
      <div className="panel-failed" role="alert">
        <p><b>{this.props.name} could not be shown.</b> {failure}</p>
        <p>The rest of the window works on, and nothing is lost. Try again; if it fails again, read the folder again.</p>
        <button type="button" onClick={() => this.setState({ failure: null })}>Try again</button>
      </div>
    );
  }
}
