package app.coilside.effects

import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.content.IntentFilter
import android.net.ConnectivityManager
import android.net.Network
import android.net.NetworkCapabilities
import android.os.BatteryManager
import app.coilside.send.Sender
import app.coilside.session.Session

/** Tells the core how much charge is left, and the sender that the network changed, while the app is in front. */
class Carrying(private val app: Context, private val session: Session, private val sender: Sender) {
    private var told: Int? = NOT_TOLD
    private val battery = object : BroadcastReceiver() {
        override fun onReceive(context: Context?, intent: Intent?) = charge(intent)
    }
    private val network = object : ConnectivityManager.NetworkCallback() {
        override fun onAvailable(network: Network) = sender.hurry()

        override fun onCapabilitiesChanged(network: Network, capabilities: NetworkCapabilities) = sender.hurry()
    }

    fun begin() {
        charge(app.registerReceiver(battery, IntentFilter(Intent.ACTION_BATTERY_CHANGED)))
        app.getSystemService(ConnectivityManager::class.java).registerDefaultNetworkCallback(network)
    }

    fun end() {
        app.unregisterReceiver(battery)
        app.getSystemService(ConnectivityManager::class.java).unregisterNetworkCallback(network)
    }

    /** Per cent; none while it charges or where it is not known. */
    private fun charge(intent: Intent?) {
        val level = intent?.getIntExtra(BatteryManager.EXTRA_LEVEL, -1) ?: -1
        val scale = intent?.getIntExtra(BatteryManager.EXTRA_SCALE, -1) ?: -1
        val charges = (intent?.getIntExtra(BatteryManager.EXTRA_PLUGGED, 0) ?: 0) != 0
        val percent = if (level < 0 || scale <= 0 || charges) null else level * PER_CENT / scale
        if (percent == told) return
        told = percent
        session.charged(percent)
    }

    private companion object {
        const val PER_CENT = 100
        const val NOT_TOLD = -1
    }
}
