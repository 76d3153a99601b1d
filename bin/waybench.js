#!/usr/bin/env node
import '../dist/server/main.js'
