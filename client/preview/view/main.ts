/** The page of the preview: builds the view once and hands it what arrives. */
import './style.css';
import './choices.css';
import './tools.css';
import './bench.css';
import { speak, type Words } from '../../../grammar/say';
import { lineTypes } from '../../../server/drawing/lines';
import type { ToView } from '../protocol';
import { styled } from './dom';
import { px } from './draw';
import { Viewer, type Host } from './viewer';

declare function acquireVsCodeApi(): Host;

/** Hands the one table of line types to the style sheet. */
function setLineTypes(root: HTMLElement): void {
  for (const [role, { weight, dash }] of Object.entries(lineTypes)) {
    const pattern = dash.length ? dash.map((mm) => `${px(mm)}px`).join(' ') : 'none';
    styled(root, { [`--${role}-weight`]: `${px(weight)}px`, [`--${role}-dash`]: pattern });
  }
}

/** What the view remembers of a text holds for the file that it was saved as. */
function rename(host: Host, was: string, uri: string): void {
  const state = host.getState();
  if (state?.uri === was) host.setState({ ...state, uri });
}

function start(): void {
  const root = document.getElementById('preview')!;
  if (root.dataset.words) speak(JSON.parse(root.dataset.words) as Words);
  setLineTypes(root);
  const host = acquireVsCodeApi();
  const { uri = '', seat = '', was } = root.dataset;
  if (was !== undefined) rename(host, was, uri);
  const viewer = new Viewer(root, host, { uri, seat });
  window.addEventListener('message', (event: MessageEvent<ToView>) => viewer.receive(event.data));
  viewer.ready();
}

start();
