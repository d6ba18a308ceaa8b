import { Component, type ReactNode } from 'react';

interface OtherwiseProps {
  /** Stands in the place of what did not load or failed, which takes nothing else with it. */
  readonly show: ReactNode;
  readonly children: ReactNode;
}

export class Otherwise extends Component<OtherwiseProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? this.props.show : this.props.children;
  }
}
