package app.coilside.effects

import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import app.coilside.ShellApp
import app.coilside.send.SendJob

/** The phone was switched on, its clock was set, or the app was renewed: alarms are set again, and sending goes on. */
class BootReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        if (intent.action !in HEARD) return
        ShellApp.alarms(context).setAgain()
        ShellApp.session(context).refresh()
        SendJob.plan(context)
    }

    private companion object {
        val HEARD = setOf(
            Intent.ACTION_BOOT_COMPLETED,
            Intent.ACTION_MY_PACKAGE_REPLACED,
            Intent.ACTION_TIME_CHANGED,
            Intent.ACTION_TIMEZONE_CHANGED,
        )
    }
}
