package app.coilside

import android.content.Context
import android.os.SystemClock
import android.provider.Settings
import coilside.Now
import java.io.File
import java.security.SecureRandom
import java.util.TimeZone

/** The ground of a real device. */
class DeviceGround(private val app: Context) : Ground {
    private val boot = "boot-" + Settings.Global.getInt(app.contentResolver, Settings.Global.BOOT_COUNT, 0)

    override fun now(): Now {
        val utcMs = System.currentTimeMillis()
        return Now(
            utcMs = utcMs,
            offsetMin = TimeZone.getDefault().getOffset(utcMs) / MS_A_MINUTE,
            // Counts on while the device sleeps.
            monoMs = SystemClock.elapsedRealtime(),
            monoEpoch = boot,
        )
    }

    override fun entropy(): ByteArray = ByteArray(ENTROPY_BYTES).also { SecureRandom().nextBytes(it) }

    override fun signer(app: Context): Signer = KeyStoreSigner.ofThisDevice(app)

    override fun folder(app: Context): File = File(app.noBackupFilesDir, "store")

    private companion object {
        const val MS_A_MINUTE = 60_000
        const val ENTROPY_BYTES = 64
    }
}
