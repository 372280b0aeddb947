import { mount } from 'svelte';
import App from './App.svelte';
import './theme/tokens.css';
import './theme/classes.css';

mount(App, { target: document.getElementById('app')! });
