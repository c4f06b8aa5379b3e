import './pages/front-door.ts';
