package app.coilside.effects

import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import app.coilside.ShellApp
import coilside.Outcome

/** The time of an alarm has come. One whose step ended or was taken back in the meantime stays silent. */
class AlarmReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val id = intent.data?.schemeSpecificPart ?: return
        val alarms = ShellApp.alarms(context)
        val text = alarms.comes(id) ?: return
        val session = ShellApp.session(context)
        // Where the receiver is called directly there is nothing to finish.
        val pending: PendingResult? = goAsync()
        session.whetherOpen(id) { open ->
            alarms.ring(id, text, open, session.screen?.language)
            if (open) session.done(id, Outcome.Woken)
            pending?.finish()
        }
    }
}
