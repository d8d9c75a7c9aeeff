import { mount } from 'svelte';
import App from './App.svelte';
import './app.css';
import { start } from './lib/store';

const target = document.getElementById('app');
if (target) {
  // Nothing is to be seen before the shell has answered, or has said why not.
  void start().then(() => mount(App, { target }));
}
