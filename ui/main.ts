import './pages/app-shell.ts';
