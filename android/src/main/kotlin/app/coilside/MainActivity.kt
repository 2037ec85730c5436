package app.coilside

import android.app.Activity

/** The one activity. */
class MainActivity : Activity()
