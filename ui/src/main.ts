import { mount } from 'svelte';
import App from './App.svelte';
import './app.css';
import { store } from './lib/store.svelte';

const target = document.getElementById('app');
if (target) {
  // The shell is asked while the page is made.
  void store.start();
  mount(App, { target });
}
