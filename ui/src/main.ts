import { mount } from 'svelte';
import App from './App.svelte';
import './app.css';
import { start } from './lib/store';

const target = document.getElementById('app');
if (target) {
  // The shell is asked while the page is made.
  void start();
  mount(App, { target });
}
