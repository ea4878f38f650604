"""The web server: the app's files, with the headers that keep it to itself."""
