package app.coilside.effects

import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context
import android.content.Intent
import android.media.AudioAttributes
import android.media.Ringtone
import android.media.RingtoneManager
import android.os.VibrationEffect
import android.os.Vibrator
import android.speech.tts.TextToSpeech
import app.coilside.MainActivity
import app.coilside.R
import java.util.Locale

/** Makes an alarm seen, heard and felt: a message over the locked screen, its sound, vibration and a voice. */
class Ringer(private val app: Context) {
    private val messages = app.getSystemService(NotificationManager::class.java)
    private val vibrator = app.getSystemService(Vibrator::class.java)
    private var tone: Ringtone? = null
    private var voice: TextToSpeech? = null

    /** Rings until [stop]. Where messages are not [heard], with a sound of our own. */
    fun ring(text: String, language: String?, heard: Boolean) {
        if (heard) messages.notify(MESSAGE, message(text)) else sound()
        @Suppress("DEPRECATION")
        vibrator?.vibrate(VibrationEffect.createWaveform(PATTERN_MS, 0), ALARM)
        speak(text, language)
    }

    private fun message(text: String): Notification {
        channel()
        val open = Intent(app, MainActivity::class.java).addFlags(Intent.FLAG_ACTIVITY_NEW_TASK)
        val opening = PendingIntent.getActivity(app, 0, open, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
        val message = Notification.Builder(app, CHANNEL)
            .setSmallIcon(R.drawable.glyph_bell)
            .setContentTitle(text)
            .setCategory(Notification.CATEGORY_ALARM)
            .setVisibility(Notification.VISIBILITY_PUBLIC)
            .setOngoing(true)
            .setContentIntent(opening)
            .setFullScreenIntent(opening, true)
            .build()
        message.flags = message.flags or Notification.FLAG_INSISTENT
        return message
    }

    private fun channel() {
        val channel = NotificationChannel(CHANNEL, app.getString(R.string.channel_alarms), NotificationManager.IMPORTANCE_HIGH)
        channel.description = app.getString(R.string.channel_alarms_text)
        channel.setSound(RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM), ALARM)
        channel.enableVibration(false)
        channel.lockscreenVisibility = Notification.VISIBILITY_PUBLIC
        messages.createNotificationChannel(channel)
    }

    private fun sound() {
        tone = RingtoneManager.getRingtone(app, RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM))?.apply {
            audioAttributes = ALARM
            play()
        }
    }

    /** Says the text aloud, where the phone has a voice. */
    private fun speak(text: String, language: String?) {
        voice?.shutdown()
        voice = TextToSpeech(app) { status ->
            val speaker = voice ?: return@TextToSpeech
            if (status != TextToSpeech.SUCCESS) return@TextToSpeech
            speaker.setAudioAttributes(ALARM)
            language?.let { speaker.setLanguage(Locale.forLanguageTag(it)) }
            repeat(TIMES_SAID) { speaker.speak(text, TextToSpeech.QUEUE_ADD, null, "alarm") }
        }
    }

    fun stop() {
        messages.cancel(MESSAGE)
        vibrator?.cancel()
        tone?.stop()
        tone = null
        voice?.shutdown()
        voice = null
    }

    fun close() {
        voice?.shutdown()
        voice = null
    }

    private companion object {
        const val CHANNEL = "alarms"
        const val MESSAGE = 1
        const val TIMES_SAID = 2
        val PATTERN_MS = longArrayOf(0, 400, 200, 400, 1200)
        val ALARM: AudioAttributes = AudioAttributes.Builder()
            .setUsage(AudioAttributes.USAGE_ALARM)
            .setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION)
            .build()
    }
}
